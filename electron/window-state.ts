/** What each window of a station remembers for its next start: its place, its size, and whether it filled the screen. */
import { mkdir, open, readFile, rename } from 'node:fs/promises';
import { join } from 'node:path';
import { z } from 'zod';

/** The bench is the first window; the desk has one of its own where somebody opens it. */
export const windowKinds = ['bench', 'desk'] as const;
export type WindowKind = (typeof windowKinds)[number];

const pixels = z.int().min(-100_000).max(100_000);
const windowStateSchema = z.object({
  /** As it is while it neither fills the screen nor is minimised. */
  bounds: z.object({ x: pixels, y: pixels, width: pixels.positive(), height: pixels.positive() }),
  isMaximised: z.boolean(),
  isKiosk: z.boolean(),
});
export type WindowState = z.output<typeof windowStateSchema>;

const statesSchema = z.partialRecord(z.enum(windowKinds), windowStateSchema);
type States = z.output<typeof statesSchema>;

/** A moved window moves many times a second; it is written down when it has come to rest. */
const restMs = 400;

export class WindowStates {
  readonly #path: string;
  #states: States;
  #timer: NodeJS.Timeout | undefined;
  #written: Promise<void> = Promise.resolve();

  private constructor(path: string, states: States) {
    this.#path = path;
    this.#states = states;
  }

  /** A file that is not there, cut off or not ours is as good as none. */
  static async read(folder: string): Promise<WindowStates> {
    const path = join(folder, 'windows.json');
    const text = await readFile(path, 'utf8').catch(() => '{}');
    return new WindowStates(path, statesIn(text));
  }

  of(kind: WindowKind): WindowState | undefined {
    return this.#states[kind];
  }

  set(kind: WindowKind, state: WindowState): void {
    this.#states = { ...this.#states, [kind]: state };
    clearTimeout(this.#timer);
    this.#timer = setTimeout(() => void this.flush(), restMs);
  }

  /** Writes down what is known now. A folder that cannot be written costs the window its place, and nothing else. */
  flush(): Promise<void> {
    clearTimeout(this.#timer);
    const text = JSON.stringify(this.#states);
    this.#written = this.#written.then(() => writeWhole(this.#path, text)).catch(() => undefined);
    return this.#written;
  }
}

const statesIn = (text: string): States => {
  try {
    return statesSchema.safeParse(JSON.parse(text)).data ?? {};
  } catch {
    return {};
  }
};

/** The old file or the new one, and never a part of one, whenever the power goes. */
const writeWhole = async (path: string, text: string): Promise<void> => {
  await mkdir(join(path, '..'), { recursive: true });
  const part = `${path}.part`;
  const file = await open(part, 'w');
  try {
    await file.writeFile(text);
    await file.sync();
  } finally {
    await file.close();
  }
  await rename(part, path);
};
