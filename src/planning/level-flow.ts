/**
 * Inspections placed on bench days one after the other, so that the weeks stay as level as they can be.
 *
 * The cost of a plan is the sum over the weeks of (inspections planned)² ÷ (inspections possible). It is a flow from the
 * inspections over days of limited capacity to weeks of convex cost; each new inspection goes the cheapest way that is left,
 * moving others where that helps, which keeps the whole at its least cost (successive shortest paths: R. Ahuja, T. Magnanti,
 * J. Orlin, Network Flows, 1993, chapters 9 and 14, from memory). As moving costs nothing by itself, the cheapest way is any
 * way to the week with the least cost of one more. Of equally cheap weeks the latest is taken: no work comes forward for nothing.
 */

/** Numbers of days, from 0, the last included. */
export interface DayWindow {
  readonly first: number;
  readonly last: number;
}

export interface FlowDay {
  /** Inspections that the bench can make on it. */
  readonly capacity: number;
  /** Number of its week; never less than that of the day before. */
  readonly week: number;
}

/** How a day was reached: by an inspection that could move there, or by its week, which could do with one less from it. */
type ReachedBy =
  | { readonly by: 'inspection'; readonly inspection: number; readonly from: number | undefined }
  | { readonly by: 'week' };

export class LevelFlow {
  readonly #days: readonly FlowDay[];
  readonly #daysOfWeek: readonly (readonly number[])[];
  readonly #weekCapacity: readonly number[];
  readonly #windows: DayWindow[] = [];
  readonly #placed: Set<number>[];
  readonly #weekLoad: number[];

  constructor(days: readonly FlowDay[]) {
    this.#days = days;
    const weeks = (days.at(-1)?.week ?? -1) + 1;
    const daysOfWeek = Array.from({ length: weeks }, (): number[] => []);
    for (const [day, { week }] of days.entries()) daysOfWeek[week]?.push(day);
    this.#daysOfWeek = daysOfWeek;
    this.#weekCapacity = daysOfWeek.map((each) => each.reduce((sum, day) => sum + this.#capacity(day), 0));
    this.#placed = days.map(() => new Set());
    this.#weekLoad = daysOfWeek.map(() => 0);
  }

  /** Inspections on each day. */
  get loads(): readonly number[] {
    return this.#placed.map(({ size }) => size);
  }

  /**
   * `undefined` where the inspection found its place. Else the days in which there are more inspections than can be made: none
   * of those that are in them can be made outside, and all of them are full (P. Hall's condition, 1935).
   */
  place(window: DayWindow): DayWindow | undefined {
    const inspection = this.#windows.length;
    const { reachedBy, gate, full } = this.#reachable(inspection, window);
    const week = this.#cheapest(gate);
    if (week === undefined) return full;
    this.#windows.push(window);
    this.#take(week, reachedBy, gate);
    return undefined;
  }

  #capacity(day: number): number {
    return this.#days[day]?.capacity ?? 0;
  }

  #load(day: number): number {
    return this.#placed[day]?.size ?? 0;
  }

  /** `gate` holds, for each week that can take one more, the day by which it would come. */
  #reachable(inspection: number, window: DayWindow) {
    const reachedBy = new Array<ReachedBy | undefined>(this.#days.length);
    const gate = new Map<number, number>();
    const waiting: number[] = [];
    let { first, last } = window;
    const reach = (day: number, by: ReachedBy): void => {
      if (reachedBy[day] !== undefined) return;
      reachedBy[day] = by;
      first = Math.min(first, day);
      last = Math.max(last, day);
      waiting.push(day);
    };
    /** For each day one that is not after the first unreached day from there on, so that none is asked often. */
    const ahead = Int32Array.from({ length: this.#days.length + 1 }, (_, day) => day);
    const unreached = (from: number): number => {
      let day = from;
      while (reachedBy[day] !== undefined) day = Math.max(day + 1, ahead[day] ?? day);
      ahead[from] = day;
      return day;
    };
    const reachAll = (from: number, to: number, by: ReachedBy): void => {
      for (let day = unreached(from); day <= to; day = unreached(day + 1)) reach(day, by);
    };
    reachAll(window.first, window.last, { by: 'inspection', inspection, from: undefined });
    for (let next = 0; next < waiting.length; next += 1) {
      const day = waiting[next] ?? 0;
      const { week } = this.#days[day] ?? { week: -1 };
      if (this.#load(day) < this.#capacity(day) && !gate.has(week)) {
        gate.set(week, day);
        for (const other of this.#daysOfWeek[week] ?? [])
          if (this.#load(other) > 0) reach(other, { by: 'week' });
      }
      const { earliest, latest } = this.#movable(day);
      if (earliest !== undefined)
        reachAll(this.#window(earliest).first, day, { by: 'inspection', inspection: earliest, from: day });
      if (latest !== undefined)
        reachAll(day, this.#window(latest).last, { by: 'inspection', inspection: latest, from: day });
    }
    return { reachedBy, gate, full: { first, last } };
  }

  #window(inspection: number): DayWindow {
    return this.#windows[inspection] ?? { first: 0, last: -1 };
  }

  /** Of the inspections on a day, those that can move farthest; every day between is open to one of the two. */
  #movable(day: number): { readonly earliest: number | undefined; readonly latest: number | undefined } {
    let earliest: number | undefined;
    let latest: number | undefined;
    for (const each of this.#placed[day] ?? []) {
      const { first, last } = this.#window(each);
      if (earliest === undefined || first < this.#window(earliest).first) earliest = each;
      if (latest === undefined || last > this.#window(latest).last) latest = each;
    }
    return { earliest, latest };
  }

  /** One more in a week costs (2 × planned + 1) ÷ possible; fractions are compared by their products. */
  #cheapest(gate: ReadonlyMap<number, number>): number | undefined {
    let best: number | undefined;
    for (const week of gate.keys()) {
      if (best === undefined) best = week;
      const here = (2 * (this.#weekLoad[week] ?? 0) + 1) * (this.#weekCapacity[best] ?? 0);
      const there = (2 * (this.#weekLoad[best] ?? 0) + 1) * (this.#weekCapacity[week] ?? 0);
      if (here < there || (here === there && week > best)) best = week;
    }
    return best;
  }

  /** Goes the way back from the week to the new inspection, and moves what stands on it. */
  #take(end: number, reachedBy: readonly (ReachedBy | undefined)[], gate: ReadonlyMap<number, number>): void {
    let week = end;
    this.#weekLoad[week] = (this.#weekLoad[week] ?? 0) + 1;
    let day = gate.get(week);
    while (day !== undefined) {
      const reached = reachedBy[day];
      if (reached === undefined) throw new Error('A way in the plan is broken.');
      if (reached.by === 'inspection') {
        if (reached.from !== undefined) this.#placed[reached.from]?.delete(reached.inspection);
        this.#placed[day]?.add(reached.inspection);
        day = reached.from;
      } else {
        week = this.#days[day]?.week ?? -1;
        day = gate.get(week);
      }
    }
  }
}
