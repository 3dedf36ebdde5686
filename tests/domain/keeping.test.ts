import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { calendarDate, instant } from '../../src/domain/brand.ts';
import { addDays } from '../../src/domain/calendar.ts';
import {
  type BackupFile,
  backupFileName,
  backupState,
  isBackupDue,
  type Keeping,
  readBackupFileName,
  type StationKeeping,
  supersededBackups,
} from '../../src/domain/keeping.ts';

const keeping: Keeping = { backupFolder: '/backups', keepDays: 14, keepMonths: 12 };
const since = calendarDate('2026-03-01');
const made = (on: string): StationKeeping['lastBackup'] => ({
  fileName: 'any.zip',
  bytes: 1,
  sha256: '',
  record: { size: 1, rootHash: '' },
  pictures: 0,
  on: calendarDate(on),
  at: instant(`${on}T06:00:00.000Z`),
});

/** A backup on each of so many days up to one, at six in the morning. */
const daily = (last: string, days: number): readonly BackupFile[] =>
  Array.from({ length: days }, (_, ago) => {
    const on = addDays(calendarDate(last), -ago);
    return { fileName: on, on, moment: `${on}T060000` };
  });
const keptOf = (backups: readonly BackupFile[], rule: Keeping): readonly string[] => {
  const gone = new Set(supersededBackups(backups, rule));
  return backups.filter((backup) => !gone.has(backup)).map(({ fileName }) => fileName);
};

describe('the backup of the day', () => {
  it('is due until one was made today, and never where no folder was chosen', () => {
    const today = calendarDate('2026-03-10');
    expect(isBackupDue({ keeping: { ...keeping, since } }, today)).toBe(true);
    const yesterday = made('2026-03-09');
    expect(
      isBackupDue({ keeping: { ...keeping, since }, ...(yesterday && { lastBackup: yesterday }) }, today),
    ).toBe(true);
    const now = made('2026-03-10');
    expect(isBackupDue({ keeping: { ...keeping, since }, ...(now && { lastBackup: now }) }, today)).toBe(
      false,
    );
    expect(isBackupDue({}, today)).toBe(false);
  });

  it.each([
    ['2026-03-10', '2026-03-12', 'kept'],
    ['2026-03-10', '2026-03-13', 'overdue'],
    ['2026-02-27', '2026-03-02', 'kept'],
  ])(
    'made on %s is on %s %s: three days without one, counted from when the folder was chosen at the earliest',
    (on, today, state) => {
      const last = made(on);
      const known: StationKeeping = { keeping: { ...keeping, since }, ...(last && { lastBackup: last }) };
      expect(backupState(known, calendarDate(today))).toBe(state);
    },
  );

  it('that was never made is overdue three days after the folder was chosen', () => {
    expect(backupState({ keeping: { ...keeping, since } }, calendarDate('2026-03-03'))).toBe('kept');
    expect(backupState({ keeping: { ...keeping, since } }, calendarDate('2026-03-04'))).toBe('overdue');
    expect(backupState({}, calendarDate('2026-03-04'))).toBe('not set up');
  });
});

describe('the name of a backup', () => {
  it('says the station and the moment, and is read back', () => {
    const name = backupFileName('4f2a91c0', instant('2026-03-10T08:05:09.123Z'));
    expect(name).toBe('srl-bench-4f2a91c0-20260310T080509Z.zip');
    expect(readBackupFileName('4f2a91c0', name)).toEqual({
      fileName: name,
      on: '2026-03-10',
      moment: '2026-03-10T080509',
    });
  });

  it('of another station, and any other file, is none of ours', () => {
    const name = backupFileName('4f2a91c0', instant('2026-03-10T08:05:09.123Z'));
    for (const other of [
      name.replace('4f2a', '4f2b'),
      `${name}.part`,
      `a-${name}`,
      name.replace('0310', '1310'),
      'notes.zip',
    ])
      expect(readBackupFileName('4f2a91c0', other), other).toBeUndefined();
  });
});

describe('backups that are no longer kept', () => {
  it('leave 14 days and the newest of each of 12 months of two years of daily ones', () => {
    // Counted by hand: 14 to 27 June are the days; of the months, June 2026 back to July 2025, June's newest is a day too.
    const kept = keptOf(daily('2026-06-27', 730), keeping);
    expect(kept).toEqual([
      ...daily('2026-06-27', 14).map(({ fileName }) => fileName),
      ...['2026-05-31', '2026-04-30', '2026-03-31', '2026-02-28', '2026-01-31'],
      ...['2025-12-31', '2025-11-30', '2025-10-31', '2025-09-30', '2025-08-31', '2025-07-31'],
    ]);
  });

  it('lose nothing by a pause: days and months without a backup do not count', () => {
    const before = daily('2024-02-10', 14);
    expect(keptOf([...daily('2026-06-27', 1), ...before], { ...keeping, keepDays: 15 })).toHaveLength(15);
  });

  it('are never the newest, and of one day never the last', () => {
    fc.assert(
      fc.property(
        fc.array(fc.tuple(fc.integer({ min: 0, max: 900 }), fc.integer({ min: 0, max: 23 })), {
          minLength: 1,
        }),
        fc.integer({ min: 1, max: 30 }),
        fc.integer({ min: 0, max: 24 }),
        (times, keepDays, keepMonths) => {
          const backups = [...new Set(times.map(([ago, hour]) => `${ago} ${hour}`))].map(
            (time): BackupFile => {
              const [ago, hour] = time.split(' ').map(Number);
              const on = addDays(calendarDate('2026-06-27'), -(ago ?? 0));
              return { fileName: time, on, moment: `${on}T${String(hour).padStart(2, '0')}0000` };
            },
          );
          const kept = new Set(keptOf(backups, { ...keeping, keepDays, keepMonths }));
          const newest = backups.toSorted((a, b) => (a.moment < b.moment ? 1 : -1));
          expect(kept.has(newest[0]!.fileName)).toBe(true);
          const days = [...new Set(newest.map(({ on }) => on))].slice(0, keepDays);
          for (const day of days) {
            const last = newest.find(({ on }) => on === day)!;
            expect(kept.has(last.fileName)).toBe(true);
          }
          expect(kept.size).toBeLessThanOrEqual(keepDays + keepMonths);
        },
      ),
    );
  });
});
