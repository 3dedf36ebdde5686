/** Comes in through the front door as a browser would, and sees that the page and the station answer. */
import type { HostedStation } from './hosted-station.ts';

export interface HeadlessCheck {
  readonly pageBytes: number;
  readonly state: string;
}

/** `undefined` where anything on the way is not as a browser needs it. */
export const checkHeadless = async (hosted: HostedStation): Promise<HeadlessCheck | undefined> => {
  const entry = await fetch(hosted.newAddress(), { redirect: 'manual' });
  const cookie = entry.headers.get('set-cookie')?.split(';')[0] ?? '';
  const page = await fetch(`${hosted.origin}/`, { headers: { cookie } });
  const text = await page.text();
  const answer = await fetch(`${hosted.origin}/call`, {
    method: 'POST',
    headers: { cookie, origin: hosted.origin, 'content-type': 'application/json' },
    body: JSON.stringify({ operation: 'station.status', input: {}, language: 'en' }),
  });
  const result: unknown = await answer.json();
  const state = stateIn(result);
  return page.status === 200 && text.includes('id="root"') && state !== undefined
    ? { pageBytes: text.length, state }
    : undefined;
};

const stateIn = (result: unknown): string | undefined => {
  if (typeof result !== 'object' || result === null || !('output' in result)) return undefined;
  const { output } = result;
  return typeof output === 'object' && output !== null && 'state' in output
    ? String(output.state)
    : undefined;
};
