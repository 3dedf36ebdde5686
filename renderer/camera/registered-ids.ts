/** The register's bench IDs, for a reader that needs less evidence for one of them. */
import type { BenchId } from '../../src/domain/brand.ts';
import { call } from '../station/client.ts';

/** A page at a time. Ends early where nobody is signed in, or the station does not answer: a reader works without, too. */
export async function* registeredBenchIds(): AsyncGenerator<readonly BenchId[]> {
  for (let after: BenchId | undefined; ; ) {
    const page = await call('device.bench-ids', after === undefined ? {} : { after });
    if (!page.ok || page.output.benchIds.length === 0) return;
    yield page.output.benchIds;
    if (page.output.isLast) return;
    after = page.output.benchIds.at(-1);
  }
}
