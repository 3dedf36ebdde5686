/** The command line of the station, `npm run cli -- COMMAND`. */
import { exitCodes, runCommand } from './run.ts';

/** Who reads our output may stop reading, as `head` does; that is no fault of ours. */
for (const stream of [process.stdout, process.stderr]) {
  stream.on('error', (error: NodeJS.ErrnoException) => {
    process.exit(error.code === 'EPIPE' ? exitCodes.done : exitCodes.refused);
  });
}

process.exitCode = await runCommand(process.argv.slice(2), {
  environment: process.env,
  out: (text) => void process.stdout.write(text),
  err: (text) => void process.stderr.write(text),
});
