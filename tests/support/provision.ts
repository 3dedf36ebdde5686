/** Before any test: a folder for the run, and the missing Debian tools are installed where that can be done. */
import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { TestProject } from 'vitest/node';
import { debianPackages, isInstalled } from './debian-tools.ts';

/** Returns what removes the folder again. */
export const setup = ({ provide }: TestProject): (() => void) => {
  const runFolder = mkdtempSync(join(tmpdir(), 'srl-bench-run-'));
  provide('runFolder', runFolder);
  installMissingTools();
  return () => rmSync(runFolder, { recursive: true, force: true });
};

const installMissingTools = (): void => {
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
