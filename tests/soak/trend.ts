/** Whether something grows: how much by least squares, and what it came to early and late. */

export interface Point {
  readonly at: number;
  readonly value: number;
}

/** By how much the value grows when `at` grows by one, by least squares. */
export const slopeOf = (points: readonly Point[]): number => {
  const mean = (of: (point: Point) => number): number =>
    points.reduce((sum, point) => sum + of(point), 0) / points.length;
  const [at, value] = [mean((point) => point.at), mean((point) => point.value)];
  const across = points.reduce((sum, point) => sum + (point.at - at) ** 2, 0);
  return across === 0
    ? 0
    : points.reduce((sum, point) => sum + (point.at - at) * (point.value - value), 0) / across;
};

/** The same where the points are of several things that each begin somewhere else: each is held against its own mean. */
export const slopeWithin = (groups: readonly (readonly Point[])[]): number =>
  slopeOf(
    groups
      .filter((points) => points.length > 1)
      .flatMap((points) => {
        const mean = (of: (point: Point) => number): number =>
          points.reduce((sum, point) => sum + of(point), 0) / points.length;
        const [at, value] = [mean((point) => point.at), mean((point) => point.value)];
        return points.map((point) => ({ at: point.at - at, value: point.value - value }));
      }),
  );
