/** Whether a row of the event table is what the recorder would have written for the event in it. */
import { type RecordedEvent, recordedEventSchema } from '../../domain/event.ts';
import { canonicalJson } from '../canonical-json.ts';
import { lookUpColumns } from './event-row.ts';

/** As it stands in the bytes, whatever the schema would add or leave out. */
export const parsedEvent = (text: string): RecordedEvent | undefined => {
  try {
    const recorded: unknown = JSON.parse(text);
    return recordedEventSchema.safeParse(recorded).success ? (recorded as RecordedEvent) : undefined;
  } catch {
    return undefined;
  }
};

/** True where the event has this number and these bytes, and the columns beside it, where they are given, say what it says. */
export const isRecordedAs = (
  recorded: RecordedEvent,
  {
    seq,
    text,
    columns,
  }: { readonly seq: number; readonly text: string; readonly columns: string | undefined },
): boolean =>
  recorded.seq === seq &&
  canonicalJson(recorded) === text &&
  (columns === undefined || quotedColumns(lookUpColumns(recorded)) === columns);

/** As `quote(bench_id) || ' ' || quote(inspection)` gives them in SQLite. */
const quotedColumns = ({ bench_id, inspection }: ReturnType<typeof lookUpColumns>): string =>
  `${bench_id == null ? 'NULL' : `'${bench_id.replaceAll("'", "''")}'`} ${inspection ?? 'NULL'}`;
