/** The thread that reads picture files one after the other, so that no window waits for it. */
import { type MessagePort, parentPort } from 'node:worker_threads';
import type { BenchId } from '../../domain/brand.ts';
import { isRefusal } from '../../domain/refusal.ts';
import { prepareDecodersInNode } from './node-decoders.ts';
import { pictureFromFile } from './picture-file.ts';
import {
  answerAt,
  type FromThread,
  notAnswered,
  saysYes,
  stopAt,
  type ToThread,
} from './picture-thread-words.ts';
import { readSymbols } from './read-symbols.ts';
import { readWornTag } from './read-worn-tag.ts';

const serve = (port: MessagePort): void => {
  const tell = (word: FromThread): void => port.postMessage(word);
  prepareDecodersInNode();
  port.on('message', (job: ToThread) => {
    read(job, tell).then(tell, (error: unknown) =>
      tell({ kind: 'failed', why: error instanceof Error ? error.message : String(error) }),
    );
  });
};

const read = async (
  { image, budgetMs, knowsRegister, flags }: ToThread,
  tell: (word: FromThread) => void,
): Promise<FromThread> => {
  const started = performance.now();
  const shared = new Int32Array(flags);
  /** The register is asked in the thread that has it, and this one waits for the answer. */
  const isRegistered = (benchId: BenchId): boolean => {
    Atomics.store(shared, answerAt, notAnswered);
    tell({ kind: 'is registered?', benchId });
    Atomics.wait(shared, answerAt, notAnswered, budgetMs);
    return Atomics.load(shared, answerAt) === saysYes;
  };
  const picture = await pictureFromFile(image);
  if (isRefusal(picture)) return { kind: 'done', result: picture };
  const symbols = await readSymbols(image);
  if (isRefusal(symbols)) return { kind: 'done', result: symbols };
  const reading = await readWornTag(picture, {
    budgetMs: Math.max(1, budgetMs - (performance.now() - started)),
    isCancelled: () => Atomics.load(shared, stopAt) === 1,
    ...(knowsRegister ? { isRegistered } : {}),
  });
  return { kind: 'done', result: { symbols, reading } };
};

if (parentPort !== null) serve(parentPort);
