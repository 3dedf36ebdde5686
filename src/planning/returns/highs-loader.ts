/** Where the solver comes from: it is several megabytes, and is read only once a plan is wanted. */
type Highs = Awaited<ReturnType<typeof import('highs')['default']>>;
export type HighsLoader = () => Promise<Highs>;

let loaded: Promise<Highs> | undefined;

export const highsOnDemand: HighsLoader = () => {
  loaded ??= import('highs').then(({ default: load }) => load());
  return loaded;
};
