/** A display of its own with a real keyboard: its layout, its Caps Lock, and a scanner that strikes its keys. */
import { type ChildProcess, spawn } from 'node:child_process';
import { onTestFinished } from 'vitest';
import { runTool } from '../support/debian-tools.ts';
import { typedKeys } from '../support/keyboards.ts';

/**
 * X key codes of the evdev rules (xkeyboard-config 2.35, keycodes/evdev), by the place of the key; letters and digits stand in
 * rows.
 */
const rows: Readonly<Record<number, readonly string[]>> = {
  10: [
    'Digit1',
    'Digit2',
    'Digit3',
    'Digit4',
    'Digit5',
    'Digit6',
    'Digit7',
    'Digit8',
    'Digit9',
    'Digit0',
    'Minus',
    'Equal',
  ],
  24: [
    'KeyQ',
    'KeyW',
    'KeyE',
    'KeyR',
    'KeyT',
    'KeyY',
    'KeyU',
    'KeyI',
    'KeyO',
    'KeyP',
    'BracketLeft',
    'BracketRight',
  ],
  38: ['KeyA', 'KeyS', 'KeyD', 'KeyF', 'KeyG', 'KeyH', 'KeyJ', 'KeyK', 'KeyL', 'Semicolon', 'Quote'],
  52: ['KeyZ', 'KeyX', 'KeyC', 'KeyV', 'KeyB', 'KeyN', 'KeyM', 'Comma', 'Period', 'Slash'],
};

const keyCodes = new Map(
  Object.entries(rows).flatMap(([first, places]) =>
    places.map((place, index) => [place, Number(first) + index] as const),
  ),
);

export class XKeyboard {
  readonly display: string;

  constructor(display: string) {
    this.display = display;
  }

  setLayout(layout: 'us' | 'es'): void {
    this.#run('setxkbmap', ['-display', this.display, layout]);
  }

  pressCapsLock(): void {
    this.#run('env', [`DISPLAY=${this.display}`, 'xdotool', 'key', 'Caps_Lock']);
  }

  /** Strikes the keys of the US layout, with Return at the end, a few milliseconds apart. */
  scan(text: string): void {
    const keys = typedKeys(text, { scanner: 'us', computer: 'us' }).map(({ code, shift }) => {
      const keyCode = keyCodes.get(code);
      return shift ? `shift+${keyCode}` : String(keyCode);
    });
    this.#run('env', [`DISPLAY=${this.display}`, 'xdotool', 'key', '--delay', '4', ...keys, 'Return']);
  }

  #run(tool: string, args: readonly string[]): void {
    runTool(tool, args);
  }
}

/** Gone when the test is over. */
export const openXKeyboard = async (): Promise<XKeyboard> => {
  const server = spawn('Xvfb', ['-displayfd', '3', '-screen', '0', '1400x900x24', '-nolisten', 'tcp'], {
    stdio: ['ignore', 'ignore', 'ignore', 'pipe'],
  });
  onTestFinished(() => {
    server.kill();
  });
  return new XKeyboard(`:${await displayNumberOf(server)}`);
};

const displayNumberOf = (server: ChildProcess): Promise<string> =>
  new Promise((resolve, reject) => {
    server.once('error', reject);
    server.once('exit', () => reject(new Error('Xvfb ended at once.')));
    server.stdio[3]?.once('data', (bytes: Buffer) => resolve(bytes.toString().trim()));
  });
