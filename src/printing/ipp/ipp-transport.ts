/** One IPP message over HTTP or HTTPS and the answer to it (RFC 8010 §4, RFC 7472). */
import { request as httpRequest, type IncomingMessage } from 'node:http';
import { connect as connectTcp, type Socket } from 'node:net';
import { connect as connectTls } from 'node:tls';
import type { IppPlace } from './ipp-address.ts';
import { decodeIpp, IppSyntaxError } from './ipp-decode.ts';
import { encodeIpp } from './ipp-encode.ts';
import type { IppMessage } from './ipp-message.ts';

export type TransportFault =
  /** Nobody there: refused, no route, no such name, or silence. */
  | { readonly fault: 'unreachable' }
  /** It was there and then it was not. */
  | { readonly fault: 'broken-off' }
  | { readonly fault: 'not-ipp' }
  | { readonly fault: 'sign-in-needed' }
  | { readonly fault: 'encryption-needed' }
  /** The certificate is vouched for by nobody, or is not the one that was agreed on. */
  | { readonly fault: 'certificate'; readonly fingerprint: string };

export const isFault = (answer: IppMessage | TransportFault): answer is TransportFault => 'fault' in answer;

/** A printer that says nothing for so long is taken for gone. Common practice, no source. */
const silenceMs = 30_000;
const connectMs = 5_000;
/** Far above the attributes of any printer. */
const longestAnswer = 16 * 1024 * 1024;

class CertificateError extends Error {
  readonly fingerprint: string;
  constructor(fingerprint: string) {
    super('The certificate is not trusted.');
    this.fingerprint = fingerprint;
  }
}

/** `certificateSha256` is the one certificate that is trusted; without it, the authorities of the runtime decide. */
export const exchange = async (
  place: IppPlace,
  message: IppMessage,
  certificateSha256?: string,
): Promise<IppMessage | TransportFault> => {
  let socket: Socket | undefined;
  try {
    socket = await connect(place);
  } catch {
    return { fault: 'unreachable' };
  }
  try {
    const secured = place.encrypted ? await secure(socket, place.host, certificateSha256) : socket;
    return await post(secured, place, encodeIpp(message));
  } catch (error) {
    if (error instanceof CertificateError) return { fault: 'certificate', fingerprint: error.fingerprint };
    return { fault: error instanceof IppSyntaxError ? 'not-ipp' : 'broken-off' };
  } finally {
    socket.destroy();
  }
};

const connect = ({ host, port, socketPath }: IppPlace): Promise<Socket> =>
  new Promise((resolve, reject) => {
    const socket = connectTcp(socketPath === undefined ? { host, port } : { path: socketPath });
    socket.setTimeout(connectMs, () => socket.destroy(new Error('No answer.')));
    socket.once('error', reject);
    socket.once('connect', () => {
      socket.setTimeout(0);
      socket.off('error', reject);
      socket.on('error', () => undefined);
      resolve(socket);
    });
  });

const secure = (socket: Socket, host: string, certificateSha256: string | undefined): Promise<Socket> =>
  new Promise((resolve, reject) => {
    const secured = connectTls({
      socket,
      rejectUnauthorized: false,
      ...(/^[\d.]+$|:/.test(host) ? {} : { servername: host }),
    });
    secured.setTimeout(silenceMs, () => secured.destroy(new Error('No answer.')));
    secured.on('error', reject);
    secured.once('secureConnect', () => {
      const fingerprint = secured.getPeerCertificate().fingerprint256 ?? '';
      const trusted =
        certificateSha256 === undefined
          ? secured.authorized
          : fingerprint.replaceAll(':', '') === certificateSha256;
      if (trusted) resolve(secured);
      else reject(new CertificateError(fingerprint));
    });
  });

const post = (socket: Socket, place: IppPlace, body: Uint8Array): Promise<IppMessage | TransportFault> =>
  new Promise((resolve, reject) => {
    const request = httpRequest(
      {
        host: place.host,
        port: place.port,
        path: place.path,
        method: 'POST',
        createConnection: () => socket,
        headers: {
          'Content-Type': 'application/ipp',
          'Content-Length': body.length,
          Connection: 'close',
        },
      },
      (response) => {
        readAnswer(response).then(resolve, reject);
      },
    );
    request.setTimeout(silenceMs, () => request.destroy(new Error('No answer.')));
    request.on('error', reject);
    request.end(body);
  });

const readAnswer = async (response: IncomingMessage): Promise<IppMessage | TransportFault> => {
  const chunks: Buffer[] = [];
  let length = 0;
  for await (const chunk of response) {
    length += chunk.length;
    if (length > longestAnswer) return { fault: 'not-ipp' };
    chunks.push(chunk);
  }
  switch (response.statusCode) {
    case 200:
      return response.headers['content-type']?.startsWith('application/ipp') === true
        ? decodeIpp(Buffer.concat(chunks))
        : { fault: 'not-ipp' };
    case 401:
    case 403:
      return { fault: 'sign-in-needed' };
    case 426:
      return { fault: 'encryption-needed' };
    default:
      return { fault: 'not-ipp' };
  }
};
