/** A label printer on loopback for the tests: keeps what it is sent, and answers ~HS as it is told. */
import { createServer, type Socket } from 'node:net';
import { onTestFinished } from 'vitest';

export interface LabelPrinter {
  readonly port: number;
  /** Everything received, without the status requests. */
  received(): string;
  /** How often it was asked for its status. */
  asked(): number;
  close(): Promise<void>;
}

/**
 * The three strings of a printer that has nothing to do. Source of the form: "ZPL II Programming Guide", ~HS. Positions that
 * matter are given by name.
 */
export const hostStatus = (
  flags: Partial<
    Record<'paperOut' | 'pause' | 'headUp' | 'ribbonOut' | 'formats' | 'remaining', number>
  > = {},
): string => {
  const { paperOut = 0, pause = 0, headUp = 0, ribbonOut = 0, formats = 0, remaining = 0 } = flags;
  const strings = [
    `030,${paperOut},${pause},0591,${String(formats).padStart(3, '0')},0,0,0,000,0,0,0`,
    `000,0,${headUp},${ribbonOut},1,2,4,0,${String(remaining).padStart(8, '0')},1,000`,
    '1234,0',
  ];
  return strings.map((string) => `\x02${string}\x03\r\n`).join('');
};

export interface LabelPrinterScript {
  /** The answer to the nth status request, from 0; silence where it is undefined. */
  readonly answer?: (request: number) => string | undefined;
  /** Breaks the connection once it has received so many characters of labels. */
  readonly breakAfter?: number;
  /** Takes the connection and leaves what is sent in the network. */
  readonly readsNothing?: boolean;
}

export const startLabelPrinter = async (script: LabelPrinterScript = {}): Promise<LabelPrinter> => {
  let received = '';
  let asked = 0;
  const sockets = new Set<Socket>();
  const server = createServer((socket) => {
    sockets.add(socket);
    socket.setEncoding('latin1');
    socket.on('error', () => undefined);
    if (script.readsNothing === true) return;
    socket.on('data', (chunk: string) => {
      received += chunk;
      for (let at = received.indexOf('~HS'); at >= 0; at = received.indexOf('~HS')) {
        received = received.slice(0, at) + received.slice(at + 3);
        const answer = script.answer?.(asked);
        asked += 1;
        if (answer !== undefined) socket.write(answer, 'latin1');
      }
      if (script.breakAfter !== undefined && received.length >= script.breakAfter) socket.resetAndDestroy();
    });
    socket.on('end', () => socket.end());
  });
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  const address = server.address();
  const close = () =>
    new Promise<void>((resolve) => {
      for (const socket of sockets) socket.destroy();
      server.close(() => resolve());
    });
  onTestFinished(close);
  return {
    port: typeof address === 'object' && address !== null ? address.port : 0,
    received: () => received,
    asked: () => asked,
    close,
  };
};
