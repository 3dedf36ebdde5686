/** Whether a window can be shown from here at all. */

/** On Linux a window needs an X11 or a Wayland display; the other systems have theirs always. */
export const hasDisplay = (platform: NodeJS.Platform, environment: NodeJS.ProcessEnv): boolean =>
  platform !== 'linux' || Boolean(environment.DISPLAY) || Boolean(environment.WAYLAND_DISPLAY);

/** Chromium refuses to run its sandbox as root, which on Linux means a container. */
export const isRootOnLinux = (): boolean => process.platform === 'linux' && process.getuid?.() === 0;
