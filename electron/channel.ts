/** The one channel between the page and the station, and the scheme under which the page is served. */
export const callChannel = 'station:call';
export const pageScheme = 'app';
/** The page; everything that it loads lies under this address. */
export const pageAddress = `${pageScheme}://srl-bench/`;
