/** How several numbers or several choices are said in one line. */

/** `1–3, 5`: runs of three and more by their ends. The numbers ascend. */
export const numberRanges = (numbers: readonly number[]): string =>
  runsOf(numbers)
    .map(([first, last]) =>
      last - first > 1 ? `${first}–${last}` : last === first ? `${first}` : `${first}, ${last}`,
    )
    .join(', ');

const runsOf = (numbers: readonly number[]): readonly (readonly [number, number])[] => {
  const runs: (readonly [number, number])[] = [];
  for (const number of numbers) {
    const run = runs.at(-1);
    if (run !== undefined && number === run[1] + 1) runs[runs.length - 1] = [run[0], number];
    else runs.push([number, number]);
  }
  return runs;
};

/** One sentence out of sentences of which any one will do: what follows `or` begins in lower case. */
export const eitherOf = (texts: readonly string[], or: string): string =>
  texts
    .map((text, index) => (index === 0 ? text : `${text.slice(0, 1).toLowerCase()}${text.slice(1)}`))
    .join(` ${or} `);
