/** An aggregate out of the `state` column of its projection. */
export const stateOf = <State>({ state }: { readonly state: string }): State => JSON.parse(state) as State;
