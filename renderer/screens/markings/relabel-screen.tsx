/** A label of ours once more: every element of the manufacturer's marking is read first, then why, then what follows. */
import { useState } from 'react';
import type { BenchId } from '../../../src/domain/brand.ts';
import { reprintReasonSchema } from '../../../src/domain/tag-content.ts';
import type { DeviceCard } from '../../../src/station/views.ts';
import { AlertLine } from '../../components/alert-line.tsx';
import { Dialog } from '../../components/dialog.tsx';
import { NumberedChoices } from '../../components/numbered-choices.tsx';
import { StationError } from '../../components/station-error.tsx';
import { useText } from '../../i18n/text.ts';
import { navigate } from '../../navigation/route.ts';
import { useStationCommand, useStationQuery } from '../../station/hooks.ts';
import { expectedMarking, type MarkingLine, markingEntries } from '../device/marking-draft.ts';
import { MarkingStep } from '../device/marking-step.tsx';
import styles from './markings.module.css';

export const RelabelScreen = ({ benchId }: { readonly benchId: BenchId }) => {
  const { t } = useText();
  const { data, error } = useStationQuery('device.show', { benchId });
  if (data === undefined)
    return error === undefined ? <p>{t('screens:app.loading')}</p> : <StationError error={error} />;
  return <Relabel device={data.device} />;
};

/** What the register says stands in the fields, save for the serial number, which is typed off the device. */
const Relabel = ({ device }: { readonly device: DeviceCard }) => {
  const { t, inLanguage, language, lengthUnit } = useText();
  const { benchId, modelSheet } = device;
  const [lines, setLines] = useState<readonly MarkingLine[]>(() =>
    expectedMarking(modelSheet, {
      language,
      lengthUnit,
      material: (each) => t(`screens:material.${each}`),
    }),
  );
  const [isAsking, setAsking] = useState(false);
  const relabel = useStationCommand('device.relabel');
  const [outcome, setOutcome] = useState<Awaited<ReturnType<typeof relabel.run>>>();

  const toCard = (): void => navigate({ screen: 'device', benchId });
  if (outcome?.ok && outcome.output.outcome === 'removed') {
    return (
      <div className={styles.screen}>
        <h1>{t('screens:relabel.removed')}</h1>
        <ul className={styles.reasons}>
          {outcome.output.reasons.map(({ key, sentence }) => (
            <li key={key}>{inLanguage(sentence)}</li>
          ))}
        </ul>
        <p>{t('screens:relabel.removedText')}</p>
        <NumberedChoices
          choices={[
            {
              key: 'tag',
              label: t('screens:identity.openTag'),
              isPrimary: true,
              onChoose: () => navigate({ screen: 'tag', benchId, kind: 'quarantine' }),
            },
            {
              key: 'list',
              label: t('screens:markings.title'),
              onChoose: () => navigate({ screen: 'markings' }),
            },
          ]}
        />
      </div>
    );
  }
  if (outcome?.ok) {
    const { currentTag } = device;
    return (
      <div className={styles.screen}>
        <h1>{t('screens:relabel.may')}</h1>
        <p>{t('screens:relabel.mayText', { count: device.labelsReprinted })}</p>
        <NumberedChoices
          choices={[
            {
              key: 'id',
              label: t('screens:device.idLabel'),
              isPrimary: true,
              onChoose: () => navigate({ screen: 'tag', benchId, kind: 'id' }),
            },
            ...(currentTag === undefined
              ? []
              : [
                  {
                    key: 'tag',
                    label: t('screens:device.openTag'),
                    onChoose: () => navigate({ screen: 'tag', benchId, kind: currentTag.kind }),
                  },
                ]),
            { key: 'card', label: t('screens:identity.openCard'), onChoose: toCard },
          ]}
        />
      </div>
    );
  }
  return (
    <div className={styles.screen}>
      <h1>{t('screens:relabel.title')}</h1>
      <AlertLine sentence={relabel.error?.sentence} />
      <MarkingStep
        sheet={modelSheet}
        lines={lines}
        codes={[]}
        identifications={[]}
        onChange={setLines}
        onBack={toCard}
        onNext={() => setAsking(true)}
      />
      {isAsking ? (
        <Dialog title={t('screens:relabel.because')} onClose={() => setAsking(false)}>
          <p>{t('screens:relabel.confirm')}</p>
          <NumberedChoices
            choices={reprintReasonSchema.options.map((reason) => ({
              key: reason,
              label: t(`walk:print.why.${reason}`),
              onChoose: () => {
                setAsking(false);
                void relabel
                  .run({ benchId, marking: markingEntries(lines), reprintBecause: reason })
                  .then((result) => setOutcome(result));
              },
            }))}
          />
        </Dialog>
      ) : null}
    </div>
  );
};
