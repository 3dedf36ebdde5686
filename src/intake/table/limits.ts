/** How large a list may be: what a fleet needs many times over, and what no file may exceed to bring the station down. */

/** The largest input that carriers take is 28 MB of base64. */
export const mostFileBytes = 20_000_000;
export const mostRows = 100_000;
export const mostColumns = 200;
/** Cells of a sheet, empty ones within its bounds too. */
export const mostCells = 2_000_000;
export const mostCellCharacters = 2_000;
/** All parts of a workbook together, unpacked. */
export const mostUnpackedBytes = 120_000_000;
export const mostWorkbookParts = 2_000;
