/** How a case of *who is this?* changes with an event. */
import type { RecordedEvent } from './event.ts';
import type { IdentityCase } from './identity/identity-case.ts';

export const evolveIdentityCase = (
  identity: IdentityCase | undefined,
  { event, on, by }: RecordedEvent,
): IdentityCase | undefined => {
  if (event.type === 'identity.opened') {
    const { type: _type, ...opened } = event;
    return { ...opened, openedBy: by, openedOn: on, state: 'open', disagreements: [] };
  }
  if (identity === undefined) return undefined;
  switch (event.type) {
    case 'identity.proposed':
      return { ...identity, state: 'proposed', proposal: { benchId: event.candidate, by, on } };
    case 'identity.disagreed': {
      const { proposal, ...rest } = identity;
      const proposedBy = proposal?.by ?? '';
      const disagreement = { benchId: event.candidate, proposedBy, by, on, why: event.why };
      return { ...rest, state: 'open', disagreements: [...identity.disagreements, disagreement] };
    }
    case 'identity.taken':
      return { ...identity, state: 'taken', closed: { by, on } };
    case 'identity.left-unidentified': {
      const { proposal: _proposal, ...rest } = identity;
      return { ...rest, state: 'unidentified', keptAt: event.keptAt, closed: { by, on } };
    }
    default:
      return identity;
  }
};
