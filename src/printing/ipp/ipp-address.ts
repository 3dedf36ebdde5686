/** Addresses as people write them, as the places where an IPP printer may answer. */

export interface IppPlace {
  /** As the protocol names the printer, `ipp://` or `ipps://` (RFC 3510, RFC 7472). */
  readonly uri: string;
  readonly encrypted: boolean;
  readonly host: string;
  readonly port: number;
  readonly path: string;
  /** A socket of this computer in place of host and port. */
  readonly socketPath?: string;
}

/** Source: RFC 3510 §3 and RFC 7472 §3.4. */
const ippPort = 631;

/** The first is required of every IPP Everywhere printer (PWG 5100.14 §4.2.1); the others: common practice, no source. */
const usualPaths = ['/ipp/print', '/ipp/printer', '/ipp', '/'];

/** Schemes, their port and whether they are encrypted. */
const schemes: Readonly<Record<string, { readonly port: number; readonly encrypted: boolean }>> = {
  ipp: { port: ippPort, encrypted: false },
  ipps: { port: ippPort, encrypted: true },
  http: { port: 80, encrypted: false },
  https: { port: 443, encrypted: true },
};

/** In the order in which they are tried. A host alone is tried at the usual paths; none where the text is no address. */
export const placesOf = (address: string): IppPlace[] => {
  const scheme = /^([a-z]+):\/\//i.exec(address)?.[1]?.toLowerCase() ?? 'ipp';
  const kind = schemes[scheme];
  if (kind === undefined) return [];
  const url = parse(`http://${address.replace(/^[a-z]+:\/\//i, '')}`);
  if (url === undefined || url.hostname === '') return [];
  const port = url.port === '' ? portOf(address, kind.port) : Number(url.port);
  const path = `${url.pathname}${url.search}`;
  const paths = path === '/' ? usualPaths : [path];
  const place = (at: string): IppPlace => ({
    uri: `${kind.encrypted ? 'ipps' : 'ipp'}://${url.hostname}${port === ippPort ? '' : `:${port}`}${at}`,
    encrypted: kind.encrypted,
    host: url.hostname.replace(/^\[|\]$/g, ''),
    port,
    path: at,
  });
  return paths.map(place);
};

/** The parser drops a port 80 that was written out. */
const portOf = (address: string, otherwise: number): number =>
  /:80(\/|\?|$)/.test(address) ? 80 : otherwise;

const parse = (text: string): URL | undefined => {
  try {
    return new URL(text);
  } catch {
    return undefined;
  }
};

/** The same place over TLS, for a printer that asks for it. */
export const encryptedPlace = (place: IppPlace): IppPlace => ({
  ...place,
  uri: place.uri.replace(/^ipp:/, 'ipps:'),
  encrypted: true,
});
