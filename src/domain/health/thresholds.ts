/** From when on something of the station needs attention, or is wrong. Every number: common practice, no source. */

export const thresholds = {
  /** Room on the disk of the data folder. */
  disk: {
    wrongBelowBytes: 100_000_000,
    attentionBelowBytes: 1_000_000_000,
    wrongBelowDays: 7,
    attentionBelowDays: 90,
    /** A day of work takes at least so much: some fifty inspections of 20 kB (measured), and ten pictures of 200 kB. */
    leastBytesPerDay: 3_000_000,
  },
  /** Room on the disk of the backups, in backups like the last one. */
  backups: { wrongBelow: 1, attentionBelow: 10 },
  /** SQLite keeps its log below 4 MB while nothing holds it up. */
  logFileAttentionBytes: 64_000_000,
  /** Of the station's own process; its budget is 250 MB. */
  memory: { attentionBytes: 600_000_000, attentionFreeBytes: 300_000_000 },
  clock: {
    /** A corrected clock moves by less. */
    jumpMs: 60_000,
    aheadAttentionMs: 60_000,
    aheadWrongMs: 3_600_000,
    /** Years in which nobody works with this program. */
    firstYear: 2025,
    lastYear: 2099,
    /** So long after the time zone of the PC changed it is told. */
    zoneToldDays: 14,
  },
  checkpointAttentionDays: 7,
  verificationAttentionDays: 90,
  faults: { toldDays: 7, attentionBytes: 20_000_000 },
} as const;
