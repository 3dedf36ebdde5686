/** A plan of returns that was made, on paper or as a list. */
import { formatBenchId } from '../../domain/bench-id/bench-id.ts';
import { isRefusal, type Refusal, refusal } from '../../domain/refusal.ts';
import { listReport } from '../../reports/list-report.ts';
import type { Told } from '../../reports/report-words.ts';
import { type ReturnPlanRow, returnPlanTable } from '../../reports/return-plan-table.ts';
import { stationIn } from '../lookup.ts';
import type { OperationContext } from '../operation.ts';
import {
  choiceSentence,
  missingSentences,
  noPlanSentences,
  orderSentences,
  shipmentSentence,
  shortfallSentences,
  summarySentences,
} from '../returns/plan-words.ts';
import type { PlannedReturns } from '../returns/planned-returns.ts';
import { ReturnsText } from '../returns/returns-text.ts';
import type { ComposeControl, Composition } from './compose-report.ts';

export const returnPlanComposition = async (
  context: OperationContext,
  job: number,
  { words }: ComposeControl,
): Promise<Composition | Refusal> => {
  const station = await context.ledger.read(stationIn);
  if (isRefusal(station)) return station;
  const state = context.returnPlanJobs.stateOf(job);
  if (state?.state !== 'done') return refusal('return-plan-job-not-known', { job }, 'of.job');
  const planned = state.outcome;
  const { from, unit, input, answer } = planned;
  const textIn = (language: 'en' | 'es') =>
    new ReturnsText({ language, from, unit, currency: input.currency });
  const texts = { en: textIn('en'), es: textIn('es') };
  const say: Say = (of) => words.told({ en: of(texts.en), es: of(texts.es) });
  const each = (of: (text: ReturnsText) => readonly string[]): readonly Told[] =>
    of(texts.en).map((_, index) => say((text) => of(text)[index] ?? ''));
  const { plan } = answer;
  const data = returnPlanTable(rowsOf(planned, texts.en, say, each), words);
  const asked = [
    ...(plan.kind === 'plan'
      ? [
          ...each((text) => summarySentences(plan, text)),
          ...each((text) => plan.shipments.map((shipment) => shipmentSentence(shipment, text))),
        ]
      : each((text) => noPlanSentences(plan, text))),
    ...each((text) => shortfallSentences(plan, text)),
    ...each((text) => missingSentences(planned, text)),
  ];
  const counted = words.tell('returnPlanCount', { count: data.rows.length });
  return {
    fileName: `return-plan-${from}`,
    data,
    report: (widthMm) =>
      listReport(
        data,
        { station: station.name, on: from, at: context.now(), asked, counted },
        words,
        widthMm,
      ),
  };
};

/** In the languages of the report. */
type Say = (of: (text: ReturnsText) => string) => Told;

const rowsOf = (
  planned: PlannedReturns,
  text: ReturnsText,
  say: Say,
  each: (of: (text: ReturnsText) => readonly string[]) => readonly Told[],
): readonly ReturnPlanRow[] => {
  const { answer, recorded, input } = planned;
  const { plan } = answer;
  if (plan.kind === 'no plan') return [];
  const besides = each((words) => orderSentences(plan, words));
  return [
    ...plan.choices.map((choice): ReturnPlanRow => {
      const row = recorded?.rows.get(choice.id);
      const device = input.devices.find(({ id }) => id === choice.id);
      return {
        kind: choice.kind,
        id: row === undefined ? choice.id : formatBenchId(row.device.benchId),
        model:
          row === undefined
            ? (device?.manufacturer ?? '')
            : `${row.modelSheet.manufacturer} ${row.modelSheet.model}`,
        serial: row?.device.serial ?? '',
        lengthM: device?.lengthM ?? 0,
        month: 'month' in choice ? text.firstDay(choice.month).slice(0, 7) : undefined,
        pays: 'pays' in choice ? choice.pays : undefined,
        why: say((words) => choiceSentence(choice, plan, planned, words)),
      };
    }),
    ...plan.extraOrders.map(
      ({ lengthM, month, count }, index): ReturnPlanRow => ({
        kind: 'order',
        id: '',
        model: '',
        serial: '',
        lengthM,
        month: text.firstDay(month).slice(0, 7),
        pays: count * (input.newDevices.find((offer) => offer.lengthM === lengthM)?.price ?? 0),
        why: besides[index] ?? [],
      }),
    ),
  ];
};
