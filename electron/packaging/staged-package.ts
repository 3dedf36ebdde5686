/** The `package.json` of what is packaged: the same product without the packages that only build it. */
import { z } from 'zod';

export const packageSchema = z.object({
  name: z.string(),
  version: z.string(),
  description: z.string(),
  license: z.string(),
  dependencies: z.record(z.string(), z.string()),
});
type Package = z.output<typeof packageSchema>;

/** The runtime comes with the package, and the page and the shell are built. Threads still load `src` with `tsx`. */
const onlyToBuild: ReadonlySet<string> = new Set(['electron', 'vite', '@vitejs/plugin-react', 'typescript']);

export const stagedPackage = (product: Package) => ({
  name: product.name,
  productName: 'SRL Bench',
  version: product.version,
  description: product.description,
  license: product.license,
  private: true,
  type: 'module',
  main: 'dist/electron/main.js',
  dependencies: Object.fromEntries(
    Object.entries(product.dependencies).filter(([name]) => !onlyToBuild.has(name)),
  ),
});
