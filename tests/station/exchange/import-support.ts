/** Lists of invented devices for the tests of import, and the way of a job to its end. */
import type { InputOf, OutputOf } from '../../../src/station/contract.ts';
import type { TestStation } from '../../support/station-fixture.ts';

export type ImportEnd = Exclude<OutputOf<'import.status'>, { state: 'working' }>;
export type Preview = Extract<ImportEnd, { state: 'previewed' }>['preview'];
type Request = InputOf<'import.preview'>;

export const fileOf = (text: string, fileName = 'fleet.csv'): Request => ({
  fileName,
  contentBase64: Buffer.from(text).toString('base64'),
});

export const endOf = async ({ expectOutput }: TestStation, job: number): Promise<ImportEnd> => {
  for (;;) {
    const status = await expectOutput('import.status', { job });
    if (status.state !== 'working') return status;
    await new Promise((resolve) => setTimeout(resolve, 5));
  }
};

export const previewOf = async (station: TestStation, request: Request): Promise<Preview> => {
  const { job } = await station.expectOutput('import.preview', request);
  const end = await endOf(station, job);
  if (end.state !== 'previewed') throw new Error(`No preview: ${JSON.stringify(end)}`);
  return end.preview;
};

/** The columns as the preview shows them, for a person who agrees with all of it. */
export const agreed = ({ columns }: Preview): InputOf<'import.run'>['columns'] =>
  columns.map(({ column, meaning, unit, dates }) => ({
    column,
    meaning,
    ...(unit === undefined ? {} : { unit }),
    ...(dates === undefined ? {} : { dates }),
  }));

export const runOf = async (
  station: TestStation,
  request: Request,
  columns?: InputOf<'import.run'>['columns'],
): Promise<ImportEnd> => {
  const chosen = columns ?? agreed(await previewOf(station, request));
  const { job } = await station.expectOutput('import.run', { ...request, columns: chosen });
  return endOf(station, job);
};

export const headings =
  'Manufacturer,Model,Serial number,Date of manufacture,Rated length,Lifeline material,Diameter,Capacity,Standard,Load indicator,Status,Last inspection,Inspected by,Result,Notes';

/** Two devices of a new model, the second declared removed, and one of a model that the demo has. */
export const fleet = `${headings}
Tessaline,Mastrun 12,T12-2021-0007,2021-05,12 m,stainless steel,4.8 mm,59-140 kg,EN 360:2002,yes,in service,2025-04-30,A. Fenwick,pass,
Tessaline,Mastrun 12,T12-2021-0008,2021-05,12 m,stainless steel,4.8 mm,59-140 kg,EN 360:2002,yes,in service,2025-04-30,A. Fenwick,fail,Hook corroded.
Norvane,Lode 6,N6-23-4401,2023-02,6 m,galvanized,,,,,,,,,
`;
