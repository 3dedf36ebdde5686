/** When a window that nobody touches is locked. */
import { z } from 'zod';

/** Common practice, no source. */
export const unattendedMinutesAtFirst = 5;

/**
 * Never longer than half an hour: NIST SP 800-63B §4.2.3 asks for a new sign-in after 30 minutes without activity (from
 * memory). A bench is never left signed in for good.
 */
export const unattendedMinutesSchema = z.int().min(1).max(30);

/** How long before it a window says so. WCAG 2.2, success criterion 2.2.1: at least 20 seconds, and any simple action goes on. */
export const warningSeconds = 30;

/** How long nobody may touch a window before it is locked. */
export const unattendedMs = (station: { readonly unattendedMinutes?: number } | undefined): number =>
  (station?.unattendedMinutes ?? unattendedMinutesAtFirst) * 60_000;
