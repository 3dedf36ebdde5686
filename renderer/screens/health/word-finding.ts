/** Findings in the words of the window. */
import { type Finding, shownValues, type WordedFinding } from '../../../src/domain/health/finding.ts';
import { catalogue } from '../../i18n/catalogue.ts';
import type { Text } from '../../i18n/text.ts';

export const wordFindingWith =
  ({ t }: Text) =>
  (found: Finding): WordedFinding => {
    const values = shownValues(found.values);
    const todo = `health:todo.${found.says}`;
    return {
      ...found,
      found: t(`health:found.${found.says}`, values),
      ...(catalogue.exists(todo) ? { todo: catalogue.t(todo, values) } : {}),
    };
  };
