/**
 * Test files that take longest begin first, so that no processor idles at the end while one of them goes on; those that share a
 * process come last, one after the other, for a process is handed on only to the next of them.
 */
import { BaseSequencer, type TestSpecification } from 'vitest/node';

/** The longest first, by the seconds that they took on two processors; all others are shorter. */
const longest = [
  'e2e/accessibility-1366.test.ts',
  'e2e/accessibility-1920.test.ts',
  'e2e/desk-day-keyboard.test.ts',
  'e2e/desk-day.test.ts',
  'ledger/flips.test.ts',
  'e2e/wedge.test.ts',
  'security/random-calls.test.ts',
  'ledger/crash.test.ts',
  'soak/soak.test.ts',
  'e2e/camera.test.ts',
  'e2e/main-job.test.ts',
  'tags/read/read-worn-tag.test.ts',
  'e2e/camera-picture.test.ts',
  'host/launch.test.ts',
  'e2e/keyboard.test.ts',
  'electron/main.test.ts',
  'cli/cli.test.ts',
  'tags/every-stock-raster.test.ts',
];

const rankOf = ({ moduleId, project }: TestSpecification): number => {
  if (!project.config.isolate) return longest.length + 1;
  const rank = longest.findIndex((file) => moduleId.endsWith(`/tests/${file}`));
  return rank < 0 ? longest.length : rank;
};

export class LongFirst extends BaseSequencer {
  override async sort(files: TestSpecification[]): Promise<TestSpecification[]> {
    const sorted = await super.sort(files);
    return sorted.toSorted((a, b) => rankOf(a) - rankOf(b));
  }
}
