/** The pages of the register around the rows in sight, asked for as they come into sight. */
import type { BenchId } from '../../../src/domain/brand.ts';
import type { CallError, InputOf } from '../../../src/station/contract.ts';
import type { DeviceSummary } from '../../../src/station/views.ts';
import type { RegisterFilter } from '../../navigation/route.ts';
import { call } from '../../station/client.ts';
import { useStationQuery } from '../../station/hooks.ts';

const pageSize = 200;

type Filtering = Pick<InputOf<'device.list'>, 'standing' | 'due' | 'unprovedTag' | 'out' | 'ready'>;

const filterings: Readonly<Record<RegisterFilter, Filtering>> = {
  'in-service': { standing: ['in service'] },
  ready: { ready: true },
  out: { out: 'any' },
  'never-inspected': { standing: ['new'] },
  'due-soon': { standing: ['in service'], due: 'due soon' },
  overdue: { standing: ['in service'], due: 'overdue' },
  held: { standing: ['quarantined', 'at manufacturer'] },
  scrapped: { standing: ['scrapped'] },
  unproved: { unprovedTag: true },
};

export interface DevicePages {
  /** How many devices match; `undefined` until the first answer. */
  readonly total: number | undefined;
  readonly error: CallError | undefined;
  /** The device of a row, counted from 0; `undefined` while its page is on the way. */
  deviceAt(row: number): DeviceSummary | undefined;
  /** Of every device that matches, the first five hundred; none where they could not be read. */
  all(): Promise<readonly BenchId[]>;
}

export const useDevicePages = (
  search: string,
  filter: RegisterFilter | undefined,
  firstRow: number,
): DevicePages => {
  const page = Math.floor(firstRow / pageSize);
  const input = (index: number): InputOf<'device.list'> => ({
    ...(search === '' ? {} : { search }),
    ...(filter === undefined ? {} : filterings[filter]),
    limit: pageSize,
    offset: index * pageSize,
  });
  const first = useStationQuery('device.list', input(0));
  const here = useStationQuery('device.list', input(page));
  const next = useStationQuery('device.list', input(page + 1), {
    enabled: (first.data?.total ?? 0) > (page + 1) * pageSize,
  });
  return {
    total: first.data?.total,
    all: async () => {
      const found = await call('device.list', { ...input(0), limit: 500 });
      return found.ok ? found.output.devices.map(({ benchId }) => benchId) : [];
    },
    error: first.error ?? here.error ?? next.error,
    deviceAt: (row) => {
      const offset = row - page * pageSize;
      return offset < pageSize ? here.data?.devices[offset] : next.data?.devices[offset - pageSize];
    },
  };
};
