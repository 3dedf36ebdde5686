/** Every pair of colours that the style sheets can bring together, in both themes, by the formula of WCAG 2.2. */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import axe from 'axe-core';
import { describe, expect, test } from 'vitest';
import { grouped } from '../../../src/domain/grouped.ts';
import { productFolder } from '../../../src/host/product-folder.ts';
import { seededRandom } from '../../support/seeded-random.ts';
import { type Colour, colourOf, contrastOf } from './contrast.ts';
import { groundsWithoutWords, lines, type Pair, surfaces, wordPairs } from './pairs.ts';
import { rulesIn, styleRules, subjectOf, tokensIn } from './style-rules.ts';

/** [P] WCAG 2.2, success criterion 1.4.3 for words that are not large, and 1.4.11 for edges and shapes that carry a meaning. */
const leastOfWords = 4.5;
const leastOfShapes = 3;

const everyRule = styleRules();
const tokenRules = everyRule.filter(({ file }) => file === 'design/tokens.css');
const rules = everyRule.filter(({ file }) => file !== 'design/tokens.css');

const declared = (selector: string): ReadonlyMap<string, string> =>
  new Map(
    tokenRules
      .filter((rule) => rule.selector === selector)
      .flatMap(({ declarations }) => [...declarations])
      .map(([property, value]) => [property.replace(/^--/, ''), value]),
  );
const light = declared(':root');
const dark = new Map([...light, ...declared(':root[data-theme="dark"]')]);
const themes = { light, dark } as const;

/** Custom properties that one drawing sets for itself, by the tokens that they stand for in turn. */
const standsFor: Readonly<Record<string, readonly string[]>> = {
  drawn: ['ink'],
  metal: ['panel'],
  pen: ['ink', 'accent'],
  body: ['panel', 'accent-wash'],
};
/** Sizes that stand in a shorthand beside a colour. */
const sizes = new Set(['stroke', 'thickness', 'space-1', 'space-2', 'space-3', 'space-4']);

/** Custom properties that a component sets on its element. */
const givenByCode: ReadonlySet<string> = new Set(['thickness']);

/** Shapes without words, whose ground is the shape itself. */
const shapes: readonly string[] = [
  'components/check-box.module.css',
  'drawing/lifeline-strip.module.css',
  'drawing/lifeline-map.module.css',
  'screens/identity/who.module.css',
  'screens/first-start/first-start.module.css',
  'screens/insight/insight.module.css',
  'screens/bench/walk-progress.module.css',
  'screens/records/records.module.css',
  'screens/schedule/schedule.module.css',
  'screens/exchange/exchange.module.css',
];
/** Grounds on which no word of the page stands: what veils the screen behind a dialog, printed symbols, the camera. */
const grounds = new Set(['veil', 'paper', 'unlit']);
/**
 * Divides what space divides as well and never bounds anything that can be pressed or filled in, so 1.4.11 asks nothing
 * of it; under words only while a button is held down.
 */
const divider = 'edge-soft';

const faultsOf = (pairs: readonly Pair[], least: number): readonly string[] =>
  [...grouped(pairs, ({ front, ground }) => `${front} on ${ground}`)].flatMap(([name, together]) => {
    const [{ front, ground, where }] = together as [Pair];
    return Object.entries(themes).flatMap(([theme, tokens]) => {
      const ratio = contrastOf(colourOf(tokens.get(front) ?? ''), colourOf(tokens.get(ground) ?? ''));
      return ratio >= least ? [] : [`${name}, ${theme}: ${ratio.toFixed(2)} (${where})`];
    });
  });

describe('the formula of contrast', () => {
  // [P] WCAG 2.2, definition of contrast ratio (from 1 to 21); WebAIM, Contrast and Color Accessibility: #767676 on white
  // has 4.54:1 and #777777 4.48:1; #949494 is the lightest grey with 3:1 on white, 3.03:1 (from memory).
  test.each([
    ['#000000', '#ffffff', 21],
    ['#fff', '#ffffff', 1],
    ['#767676', '#ffffff', 4.54],
    ['#777777', '#ffffff', 4.48],
    ['#949494', '#ffffff', 3.03],
  ])('gives for %s on %s what is published: %d', (front, ground, ratio) => {
    expect(contrastOf(colourOf(front), colourOf(ground))).toBeCloseTo(ratio, 2);
  });

  test('agrees with axe-core on any two colours', () => {
    const { Color, getContrast } = (axe as unknown as AxeWithColours).commons.color;
    const random = seededRandom(143);
    const anyColour = (): Colour => [random.whole(0, 255), random.whole(0, 255), random.whole(0, 255)];
    for (let times = 0; times < 500; times += 1) {
      const [front, ground] = [anyColour(), anyColour()];
      expect(contrastOf(front, ground)).toBeCloseTo(
        getContrast(new Color(...ground), new Color(...front)),
        2,
      );
    }
  });
});

/** What axe-core computes with, which its declarations leave out. */
interface AxeWithColours {
  readonly commons: {
    readonly color: {
      readonly Color: new (red: number, green: number, blue: number) => object;
      getContrast(ground: object, front: object): number;
    };
  };
}

describe('the colours of the screens', () => {
  test('are tokens, each of them', () => {
    const written =
      /#[0-9a-f]{3,8}\b|\b(?:rgba?|hsla?|hwb|lab|lch|oklab|oklch)\(|\b(?:white|black|red|green|blue|gr[ae]y|yellow|orange|navy|teal|silver|maroon)\b/i;
    const inStyles = rules.flatMap(({ file, selector, declarations }) =>
      [...declarations]
        .filter(([, value]) =>
          written.test(value.replaceAll(/var\([^)]*\)|color-mix\(in \w+|url\([^)]*\)/g, '')),
        )
        .map(([property, value]) => `${file} ${selector}: ${property}: ${value}`),
    );
    expect(inStyles).toEqual([]);
    const folder = join(productFolder, 'renderer');
    const inCode = readdirSync(folder, { recursive: true, encoding: 'utf8' })
      .filter((name) => name.endsWith('.tsx'))
      .filter((name) =>
        /(?:fill|stroke|color|background)(?:Style)?\s*[=:]\s*[{]?['"`](?:#|rgb|hsl)/i.test(
          readFileSync(join(folder, name), 'utf8'),
        ),
      );
    expect(inCode).toEqual([]);
  });

  test('that a rule refers to are there, in both themes', () => {
    const own = new Set(
      rules.flatMap(({ declarations }) => [...declarations.keys()]).map((name) => name.replace(/^--/, '')),
    );
    const unknown = rules.flatMap(({ file, selector, declarations }) =>
      [...declarations.values()]
        .flatMap(tokensIn)
        .filter((name) => !light.has(name) && !own.has(name) && !givenByCode.has(name))
        .map((name) => `${file} ${selector}: ${name}`),
    );
    expect(unknown).toEqual([]);
    const colours = [...light].filter(([, value]) => value.startsWith('#')).map(([name]) => name);
    const sameInBoth = colours.filter((name) => light.get(name) === dark.get(name));
    expect(sameInBoth).toEqual(['paper', 'unlit']);
  });

  test('have at least 4.5 to 1 where one is of words and the other is under them', () => {
    const pairs = wordPairs(rules).filter(
      ({ front, ground }) => !grounds.has(ground) && !(front in standsFor),
    );
    expect(pairs.length).toBeGreaterThan(100);
    expect(pairs.some(({ front, ground }) => front === 'on-remove' && ground === 'remove')).toBe(true);
    expect(pairs.some(({ front, ground }) => front === 'ink-soft' && ground === 'accent-wash')).toBe(true);
    expect(faultsOf(pairs, leastOfWords)).toEqual([]);
  });

  test('have it where words take their colour from outside, on every ground that they can come to stand on', () => {
    const fronts = [
      ...new Set(
        wordPairs(rules)
          .filter(({ ground }) => surfaces.includes(ground))
          .map(({ front }) => front),
      ),
    ];
    const notOnSurfaces = /^(?:on-|panel$)/;
    const all = fronts
      .filter((front) => !notOnSurfaces.test(front))
      .flatMap((front) => surfaces.map((ground) => ({ front, ground, where: 'any' })));
    expect(all.length).toBeGreaterThanOrEqual(4 * surfaces.length);
    expect(faultsOf(all, leastOfWords)).toEqual([]);
    const elsewhere = groundsWithoutWords(rules)
      .filter(({ ground, where }) => {
        const isShape = shapes.some((file) => where.startsWith(file));
        return !surfaces.includes(ground) && !grounds.has(ground) && ground !== divider && !isShape;
      })
      .map(({ ground, where }) => `${ground}: ${where}`);
    expect(elsewhere).toEqual([]);
  });

  test('have at least 3 to 1 where one draws an edge, a ring or a shape with a meaning', () => {
    const drawn = lines(rules)
      .filter(({ front }) => !sizes.has(front) && front !== divider)
      .flatMap(({ front, where }) => (standsFor[front] ?? [front]).map((each) => ({ front: each, where })))
      .filter(({ front }) => light.get(front)?.startsWith('#') === true);
    const filled = groundsWithoutWords(rules)
      .filter(
        ({ where, ground }) => shapes.some((file) => where.startsWith(file)) && !surfaces.includes(ground),
      )
      .map(({ ground, where }) => ({ front: ground, where }));
    const ofGround = /^(?:on-|panel$|ground$|sunk$|accent-wash$|remove-wash$)/;
    const pairs = [...drawn, ...filled]
      .filter(({ front }) => !ofGround.test(front) && front !== divider)
      .flatMap(({ front, where }) => surfaces.map((ground) => ({ front, ground, where })));
    expect(new Set(pairs.map(({ front }) => front))).toEqual(
      new Set(['ink', 'ink-soft', 'edge', 'accent', 'accent-strong', 'remove', 'focus']),
    );
    expect(faultsOf(pairs, leastOfShapes)).toEqual([]);
  });

  test('that only divide bound nothing that can be pressed or filled in', () => {
    const pressed = /cursor|data-hovered|data-pressed|data-focus-visible|:hover|:focus|data-selected/;
    const active = new Set(
      rules
        .filter(({ selector, declarations }) => pressed.test(selector) || declarations.has('cursor'))
        .map(({ file, selector }) => `${file} ${subjectOf(selector)}`),
    );
    const bounding = lines(rules)
      .filter(({ front }) => front === divider)
      .map(({ where }) => where)
      .filter((where) => {
        const [file = '', ...selector] = where.split(' ');
        return active.has(`${file} ${subjectOf(selector.join(' '))}`);
      });
    expect(bounding).toEqual([]);
  });
});

test('a rule is read with its selectors, states and declarations, in a media query too', () => {
  const css = `/* x */ .a:not([b="c"]) , .c[data-x] > .d:hover { color: var(--ink); border: 1px solid var(--edge) }
    @media print { p { fill: none; } }`;
  const read = rulesIn(css, 'f');
  expect(read.map(({ selector }) => [selector, subjectOf(selector)])).toEqual([
    ['.a:not([b="c"])', '.a'],
    ['.c[data-x] > .d:hover', '.d'],
    ['p', 'p'],
  ]);
  expect([...(read[1]?.declarations ?? [])]).toEqual([
    ['color', 'var(--ink)'],
    ['border', '1px solid var(--edge)'],
  ]);
});
