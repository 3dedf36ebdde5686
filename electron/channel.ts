/** The channels between the page and the shell, and the scheme under which the page is served. */

/** The page calls the station. */
export const callChannel = 'station:call';
/** The page asks the shell for an act. */
export const actChannel = 'shell:act';
/** The shell tells the page what happened to the PC. */
export const newsChannel = 'shell:news';

export const pageScheme = 'app';
/** The page; everything that it loads lies under this address. */
export const pageAddress = `${pageScheme}://srl-bench/`;

/** True of the page, wherever in it, and of what it loads. */
export const isOurs = (address: string): boolean => address.startsWith(pageAddress);
