/** The time zone of the PC, and how far a zone is from UTC at a moment. */

export const zoneOfPc = (): string => new Intl.DateTimeFormat().resolvedOptions().timeZone;

/** Minutes east of UTC. */
export const offsetMinutes = (zone: string, at: string): number => {
  const parts = new Intl.DateTimeFormat('en-US', {
    timeZone: zone,
    timeZoneName: 'longOffset',
  }).formatToParts(new Date(at));
  const text = parts.find(({ type }) => type === 'timeZoneName')?.value ?? '';
  const [, sign, hours = '0', minutes = '0'] = /GMT([+-])(\d{2}):(\d{2})/.exec(text) ?? [];
  const total = Number(hours) * 60 + Number(minutes);
  return sign === '-' ? -total : total;
};
