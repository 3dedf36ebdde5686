/** A linear program with whole numbers, in the LP format that HiGHS reads; the solver is loaded when it is first needed. */
import type { HighsLoader } from './highs-loader.ts';

export interface Term {
  readonly factor: number;
  readonly name: string;
}

export interface Row {
  readonly terms: readonly Term[];
  readonly relation: '<=' | '>=' | '=';
  readonly value: number;
}

/** From 0 to the most. */
export interface Unknown {
  readonly name: string;
  readonly most: number;
  readonly isWhole: boolean;
}

export interface LinearProgram {
  /** To be least. */
  readonly cost: readonly Term[];
  readonly rows: readonly Row[];
  readonly unknowns: readonly Unknown[];
}

export interface Optimum {
  readonly cost: number;
  /** The cheapest there can be costs at most this share less; 0 where this is the cheapest. */
  readonly within: number;
  /** Of one that is whole. */
  value(name: string): number;
}

/** The optimum, or `undefined` where nothing meets every row. */
export type Solver = (program: LinearProgram) => Optimum | undefined;

/** Up to so many whole unknowns the optimum is proved; of larger problems one that is proved to be this near to it is enough. */
const mostProved = 1200;
const nearEnough = 0.005;

/** HiGHS (MIT licence), compiled to WebAssembly: it ends only when nothing better, or nothing so much better, is left. */
export const loadSolver = async (load: HighsLoader): Promise<Solver> => {
  const highs = await load();
  return (program) => {
    if (program.unknowns.length === 0) return program.rows.every(holdsAtZero) ? nothing : undefined;
    const within = program.unknowns.filter(({ isWhole }) => isWhole).length > mostProved ? nearEnough : 0;
    const solution = highs.solve(textOf(program), {
      output_flag: false,
      mip_rel_gap: within,
      mip_abs_gap: 1e-4,
    });
    switch (solution.Status) {
      case 'Optimal':
        return {
          cost: solution.ObjectiveValue,
          within,
          value: (name) => Math.round(solution.Columns[name]?.Primal ?? 0),
        };
      case 'Infeasible':
        return undefined;
      default:
        throw new Error(`The solver ended with ${solution.Status}.`);
    }
  };
};

const nothing: Optimum = { cost: 0, within: 0, value: () => 0 };

const holdsAtZero = ({ relation, value }: Row): boolean =>
  relation === '<=' ? value >= 0 : relation === '>=' ? value <= 0 : value === 0;

/** A line of the format holds few characters, so each term has its own. */
const textOf = ({ cost, rows, unknowns }: LinearProgram): string => {
  const sum = (terms: readonly Term[]): string =>
    terms.length === 0
      ? '0 nothing'
      : terms.map(({ factor, name }) => `${factor < 0 ? '-' : '+'} ${Math.abs(factor)} ${name}`).join('\n ');
  return [
    'Minimize',
    ` cost: ${sum(cost)}`,
    'Subject To',
    ...rows.map(({ terms, relation, value }, index) => ` r${index}: ${sum(terms)} ${relation} ${value}`),
    'Bounds',
    ' nothing = 0',
    ...unknowns.map(({ name, most }) => ` 0 <= ${name} <= ${most}`),
    'General',
    ...unknowns.filter(({ isWhole }) => isWhole).map(({ name }) => ` ${name}`),
    'End',
  ].join('\n');
};
