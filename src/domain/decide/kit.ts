/** The rules of kits: names and codes are told apart, and a kit holds devices of the register. */
import type { Kit } from '../custody/kit.ts';
import type { Device } from '../device.ts';
import { refusal } from '../refusal.ts';
import type { Decision } from './decision.ts';

/** `devices` are those of the kit that the register has; `kits` and `places` are what the station knows already. */
export const decideSaveKit = (
  kit: Kit,
  devices: readonly Device[],
  kits: readonly Kit[],
  places: readonly string[],
): Decision => {
  const others = kits.filter(({ kitId }) => kitId !== kit.kitId);
  const same = others.find(({ name }) => sameName(name, kit.name));
  if (same !== undefined) return refusal('kit-name-taken', { name: same.name }, 'name');
  const taken = others.find(({ code }) => code === kit.code)?.name;
  if (taken !== undefined) return refusal('kit-code-taken', { code: kit.code, name: taken }, 'code');
  if (places.includes(kit.code)) return refusal('kit-code-is-place', { code: kit.code }, 'code');
  const benchIds = [...new Set(kit.benchIds)];
  const unknown = benchIds.find((benchId) => devices.every((device) => device.benchId !== benchId));
  if (unknown !== undefined) return refusal('device-unknown', { benchId: unknown }, 'benchIds');
  const scrapped = devices.find(({ standing }) => standing === 'scrapped');
  if (scrapped !== undefined) return refusal('device-scrapped', { benchId: scrapped.benchId }, 'benchIds');
  return [{ type: 'kit.saved', kit: { ...kit, benchIds } }];
};

export const decideRemoveKit = (kitId: string, kits: readonly Kit[]): Decision =>
  kits.some((kit) => kit.kitId === kitId)
    ? [{ type: 'kit.removed', kitId }]
    : refusal('kit-unknown', { kit: kitId }, 'kitId');

const sameName = (one: string, other: string): boolean =>
  one.localeCompare(other, undefined, { sensitivity: 'base' }) === 0;
