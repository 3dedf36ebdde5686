/** The facts of an observation, and those of a candidate, in words. */
import type { Observation, ObservedField } from '../../../src/domain/identity/observation.ts';
import {
  type HookType,
  type HousingColour,
  hookTypes,
  housingColours,
} from '../../../src/domain/model-sheet.ts';
import type { CandidateView } from '../../../src/station/identity-view.ts';
import { useText } from '../../i18n/text.ts';

export interface FactWords {
  hook(type: HookType): string;
  colour(colour: HousingColour): string;
  /** Empty where it was not seen. */
  seen(observation: Observation, field: ObservedField, lastUser: string | undefined): string;
  /** Empty where the register does not say. */
  registered(candidate: CandidateView, field: ObservedField): string;
}

export const useFactWords = (): FactWords => {
  const { t, lengthText } = useText();
  const hook = (type: HookType) => t(`screens:identity.hook.${type}`);
  const colour = (each: HousingColour) => t(`screens:identity.colour.${each}`);
  return {
    hook,
    colour,
    seen: (observation, field, lastUser) => {
      const { lengthM, lifelineMaterial, hookType, housingColour, tagNumber, found } = observation;
      switch (field) {
        case 'lengthM':
          return lengthM === undefined ? '' : lengthText(lengthM);
        case 'lifelineMaterial':
          return lifelineMaterial === undefined ? '' : t(`screens:material.${lifelineMaterial}`);
        case 'hookType':
          return hookType === undefined ? '' : hook(hookType);
        case 'housingColour':
          return housingColour === undefined ? '' : colour(housingColour);
        case 'tagNumber':
          return tagNumber === undefined ? '' : String(tagNumber);
        case 'found':
          return found === undefined ? '' : t(`screens:identity.found.${found}`);
        case 'lastUserId':
          return lastUser ?? '';
        default:
          return observation[field] ?? '';
      }
    },
    registered: (candidate, field) => {
      const { device } = candidate;
      const hookType = hookTypes.find((each) => each === candidate.hookType);
      const housing = housingColours.find((each) => each === candidate.housingColour);
      switch (field) {
        case 'manufacturer':
        case 'model':
        case 'serial':
          return device[field];
        case 'benchId':
          return candidate.benchId;
        case 'lengthM':
          return lengthText(device.ratedLengthM);
        case 'lifelineMaterial':
          return t(`screens:material.${device.lifelineMaterial}`);
        case 'hookType':
          return hookType === undefined ? '' : hook(hookType);
        case 'housingColour':
          return housing === undefined ? '' : colour(housing);
        case 'dateOfManufacture':
          return candidate.dateOfManufacture;
        case 'tagNumber':
          return candidate.tagNumber === 0 ? '' : String(candidate.tagNumber);
        case 'lastUserId':
          return candidate.regularUser ?? '';
        case 'found':
          return t(`screens:standing.${device.standing}`);
      }
    },
  };
};
