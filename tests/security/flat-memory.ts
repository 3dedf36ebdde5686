/** Watches how much memory the process takes at its most while something is done. */

export const mostMemoryOf = async <Result>(
  work: () => Promise<Result>,
): Promise<{ readonly result: Result; readonly bytes: number }> => {
  const before = process.memoryUsage().rss;
  let most = before;
  const look = setInterval(() => {
    most = Math.max(most, process.memoryUsage().rss);
  }, 5);
  try {
    const result = await work();
    return { result, bytes: Math.max(most, process.memoryUsage().rss) - before };
  } finally {
    clearInterval(look);
  }
};
