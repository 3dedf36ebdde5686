/** How a job of a CUPS queue ended, asked of CUPS itself: `lpstat` lists done and canceled jobs alike. */
import type { IppPlace } from '../ipp/ipp-address.ts';
import { IppClient } from '../ipp/ipp-client.ts';
import { groupOf, groupTags, isOk, numbersOf, operations, textsOf } from '../ipp/ipp-message.ts';
import { isFault } from '../ipp/ipp-transport.ts';
import { jobStateOf } from '../ipp/job-state.ts';
import type { QueuedJob } from './lpstat.ts';
import { runProgram } from './run-program.ts';

/** Undefined where CUPS does not say. */
export const askCups = async (queue: string, jobId: string): Promise<QueuedJob | undefined> => {
  const number = Number(/-(\d+)$/.exec(jobId)?.[1]);
  const server = await runProgram('lpstat', ['-H']);
  const place = server.ran ? placeOf(server.output.trim(), queue) : undefined;
  if (place === undefined || !Number.isInteger(number)) return undefined;
  const client = new IppClient(place, { name: queue, address: place.uri });
  const answer = await client.send({ operation: operations.getJobAttributes, jobId: number });
  if (isFault(answer) || !isOk(answer.code)) return undefined;
  const attributes = groupOf(answer, groupTags.job);
  const state = jobStateOf(numbersOf(attributes, 'job-state')[0]);
  if (state === undefined) return undefined;
  const message = textsOf(attributes, 'job-printer-state-message')[0];
  return {
    state,
    reasons: textsOf(attributes, 'job-state-reasons'),
    ...(message === undefined || message === '' ? {} : { message }),
  };
};

/** `lpstat -H` gives a socket, `/run/cups/cups.sock`, or a server, `localhost:631`. */
const placeOf = (server: string, queue: string): IppPlace | undefined => {
  const path = `/printers/${encodeURIComponent(queue)}`;
  const shared = { uri: `ipp://localhost${path}`, encrypted: false, path };
  if (server.startsWith('/')) return { ...shared, host: 'localhost', port: 631, socketPath: server };
  const [, host, port] = /^\[?([^\]]+?)\]?(?::(\d+))?$/.exec(server) ?? [];
  return host === undefined ? undefined : { ...shared, host, port: Number(port ?? 631) };
};
