/** The `package.json` of what is packaged: the same product, with the packages that its bundle still asks for at run time and no others. */
import { isBuiltin } from 'node:module';
import { z } from 'zod';

export const packageSchema = z.object({
  name: z.string(),
  version: z.string(),
  description: z.string(),
  license: z.string(),
  dependencies: z.record(z.string(), z.string()),
});
type Package = z.output<typeof packageSchema>;

/** Static and dynamic imports, and what passes something on. */
const importPattern =
  /(?:^|[\s;}])(?:import|export)\s*(?:[^'"`;()]*?\bfrom\s*)?["']([^'"]+)["']|import\(\s*["']([^'"]+)["']|require\(\s*["']([^'"]+)["']\s*\)/gm;

/** Given by the runtime itself. */
const runtime = 'electron';

/** The packages that the scripts of a bundle import, sorted. */
export const packagesIn = (scripts: readonly string[]): readonly string[] => {
  const found = scripts.flatMap((script) =>
    [...script.matchAll(importPattern)].map(([, first, second, third]) => first ?? second ?? third ?? ''),
  );
  const outside = found.filter((name) => !name.startsWith('.') && !isBuiltin(name) && name !== runtime);
  return [...new Set(outside.map(packageOf))].sort();
};

const packageOf = (specifier: string): string =>
  specifier
    .split('/')
    .slice(0, specifier.startsWith('@') ? 2 : 1)
    .join('/');

/** Throws where the bundle asks for a package that is no dependency of the product. */
export const stagedPackage = (product: Package, scripts: readonly string[]): object => ({
  name: product.name,
  productName: 'SRL Bench',
  version: product.version,
  description: product.description,
  license: product.license,
  private: true,
  type: 'module',
  main: 'dist/electron/main.js',
  dependencies: Object.fromEntries(
    packagesIn(scripts).map((name) => {
      const version = product.dependencies[name];
      if (version === undefined) throw new Error(`The bundle asks for ${name}, which is no dependency.`);
      return [name, version];
    }),
  ),
});
