/** The card of a device as somebody sees it who may yet make its blind second inspection. */
import type { DeviceCard } from '../views.ts';

/** Without the hidden inspection, its corrections and the reasons that hold the device; its standing is always shown. */
export const blindCard = (card: DeviceCard, hidden: number | undefined): DeviceCard =>
  hidden === undefined
    ? card
    : {
        ...card,
        isBlind: true,
        reasons: [],
        inspections: card.inspections.filter(({ inspection }) => inspection !== hidden),
        amendments: card.amendments.filter(({ inspection }) => inspection !== hidden),
      };
