/** Which tokens of colour meet on the screens, read from the style sheets: words on their grounds, and shapes on theirs. */
import { grouped } from '../../../src/domain/grouped.ts';
import { type StyleRule, subjectOf, tokensIn } from './style-rules.ts';

export interface Pair {
  readonly front: string;
  readonly ground: string;
  /** A rule that brings them together. */
  readonly where: string;
}

/** Grounds on which words stand that say nothing of their own ground: any such word may stand on any of them. */
export const surfaces: readonly string[] = ['ground', 'panel', 'sunk', 'accent-wash', 'remove-wash'];

const whereOf = ({ file, selector }: StyleRule): string => `${file} ${selector}`;
const groundsOf = ({ declarations }: StyleRule): readonly string[] =>
  tokensIn(declarations.get('background') ?? declarations.get('background-color'));
const wordsOf = ({ declarations }: StyleRule): readonly string[] => tokensIn(declarations.get('color'));
const isStateless = ({ selector }: StyleRule): boolean => !/[:[]/.test(selector);

/** The rules of each class, by its file and its name. */
const byClass = (rules: readonly StyleRule[]): readonly (readonly StyleRule[])[] => [
  ...grouped(rules, ({ file, selector }) => `${file} ${subjectOf(selector)}`).values(),
];

/**
 * A rule that says both is one pair. A colour of words alone stands on each ground that other rules of its class give it,
 * and on every surface where its class has no ground that holds in all its states.
 */
export const wordPairs = (rules: readonly StyleRule[]): readonly Pair[] =>
  byClass(rules).flatMap((ofClass) => {
    const alone = ofClass.filter((rule) => wordsOf(rule).length === 0);
    const own = alone.flatMap(groundsOf);
    const hasGround = alone.some((rule) => isStateless(rule) && groundsOf(rule).length > 0);
    return ofClass.flatMap((rule) => {
      const together = groundsOf(rule);
      const grounds = together.length > 0 ? together : [...own, ...(hasGround ? [] : surfaces)];
      return wordsOf(rule).flatMap((front) =>
        grounds.map((ground) => ({ front, ground, where: whereOf(rule) })),
      );
    });
  });

/** Grounds of classes that say no colour of words: what stands there has taken its colour from outside. */
export const groundsWithoutWords = (rules: readonly StyleRule[]): readonly Pair[] =>
  byClass(rules)
    .filter((ofClass) => ofClass.every((rule) => wordsOf(rule).length === 0))
    .flatMap((ofClass) =>
      ofClass.flatMap((rule) =>
        groundsOf(rule).map((ground) => ({ front: 'ink', ground, where: whereOf(rule) })),
      ),
    );

const edges =
  /^(?:border(?:-(?:top|bottom|left|right|inline|block|inline-start|inline-end|block-start|block-end))?(?:-color)?|outline(?:-color)?|box-shadow|stroke|text-decoration(?:-color)?|accent-color)$/;

/** Edges, lines and rings, each with the rule that draws it. */
export const lines = (
  rules: readonly StyleRule[],
): readonly { readonly front: string; readonly where: string }[] =>
  rules.flatMap((rule) =>
    [...rule.declarations]
      .filter(([property]) => edges.test(property))
      .flatMap(([, value]) => tokensIn(value).map((front) => ({ front, where: whereOf(rule) }))),
  );
