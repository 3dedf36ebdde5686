/** `npm start`: the launcher as a bundle where there is one of its modules as they are, else those modules. */
const bundle = new URL('../../dist/host/launch.js', import.meta.url);

const startBundle = async () => {
  try {
    const { launchIfFresh } = await import(bundle.href);
    return await launchIfFresh();
  } catch {
    return false;
  }
};

if (!(await startBundle())) {
  await import('tsx');
  await import('./launch-from-modules.ts');
}
