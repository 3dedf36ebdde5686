/** What a decision is: the events that follow from a command, or the refusal of it. */
import type { DomainEvent } from '../event.ts';
import type { Refusal } from '../refusal.ts';

export type Decision = readonly DomainEvent[] | Refusal;
