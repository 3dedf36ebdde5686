/** What the readings of an inspection are held against. */
import type { LifelineFacts } from '../../../src/domain/lifeline/diameter-answer.ts';
import type { InspectionView } from '../../../src/station/views.ts';

export const lifelineFactsOf = ({
  device,
  lifelineDiameterMm,
  lifelineMinimumDiameterMm,
}: InspectionView): LifelineFacts => ({
  ratedLengthM: device.ratedLengthM,
  lifelineDiameterMm,
  lifelineMinimumDiameterMm,
});
