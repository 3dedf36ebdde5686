/** `evidence`: how much is kept, or every picture that the record of one device names. */
import type { Command } from 'commander';
import { formatBenchId } from '../../domain/bench-id/bench-id.ts';
import type { OutputOf } from '../../station/contract.ts';
import { deviceMeant, type Job, jobOf, withStation } from '../job.ts';
import type { Shell } from '../terminal.ts';
import { dateText } from '../wording.ts';

export const addEvidence = (program: Command, { words, terminal }: Shell): void => {
  program
    .command('evidence')
    .argument('[id]', words('help-device-id'))
    .description(words('help-evidence'))
    .action(async (id: string | undefined, _options, command: Command) => {
      const job = jobOf(command, terminal);
      await withStation(job, async (call) => {
        if (id === undefined) {
          const { count, bytes } = await call('evidence.summary', {});
          const megabytes = (bytes / 1_000_000).toLocaleString(job.language, { maximumFractionDigits: 1 });
          return job.give({ count, bytes }, [words('evidence-summary', { count, megabytes })]);
        }
        const benchId = await deviceMeant(job, call, id);
        const { pictures } = await call('evidence.list', { benchId });
        job.give({ benchId, pictures }, [
          words('evidence-of', { benchId: formatBenchId(benchId), count: pictures.length }),
          ...pictures.map((picture) => pictureLine(picture, job)),
        ]);
      });
    });
};

type Picture = OutputOf<'evidence.list'>['pictures'][number];

const pictureLine = (picture: Picture, { language, words }: Job): string => {
  const said = {
    date: dateText(picture.keptOn, language),
    by: picture.keptBy,
    state: words(`picture-state-${picture.state}`),
    sha256: picture.sha256,
  };
  return picture.with === 'device'
    ? words('evidence-device-line', { ...said, of: words(`picture-of-${picture.of}`) })
    : words('evidence-inspection-line', { ...said, inspection: picture.inspection, check: picture.check });
};
