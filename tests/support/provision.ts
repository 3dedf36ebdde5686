/** Before any test: installs the missing Debian tools where that can be done, and builds what is stale of the program. */
import { execFileSync } from 'node:child_process';
import { debianPackages, isInstalled } from './debian-tools.ts';

export const setup = (): void => {
  const missing = Object.keys(debianPackages).filter((tool) => !isInstalled(tool));
  if (missing.length === 0 || process.getuid?.() !== 0 || !isInstalled('apt-get')) return;
  const packages = [...new Set(missing.map((tool) => debianPackages[tool] ?? tool))];
  console.log(`Installing for the tests: ${packages.join(', ')}`);
  const environment = { ...process.env, DEBIAN_FRONTEND: 'noninteractive' };
  try {
    execFileSync('apt-get', ['update', '-qq'], { stdio: 'ignore', env: environment });
    execFileSync('apt-get', ['install', '-y', '-qq', '--no-install-recommends', ...packages], {
      stdio: 'ignore',
      env: environment,
    });
  } catch {
    console.warn('They could not be installed; the tests that need them say so.');
  }
};
