/** Computes the stored subtrees of a file that was written before they were kept. */
import { addLeaf, emptyFrontier } from '../merkle.ts';
import type { SqliteConnection } from './connection.ts';

/** Events that are read, and rows that are written, at a time. */
const chunk = 500;

/** Within the transaction that made the table. Memory stays flat however long the record is. */
export const fillSubtrees = async (connection: SqliteConnection): Promise<void> => {
  let frontier = emptyFrontier;
  for (;;) {
    const rows = await connection.all<{ leaf_hash: Buffer }>(
      'select leaf_hash from event where seq > ? order by seq limit ?',
      [frontier.size, chunk],
    );
    const subtrees: (number | Buffer)[] = [];
    for (const { leaf_hash: leaf } of rows) {
      const grown = addLeaf(frontier, leaf);
      frontier = grown.frontier;
      if (grown.completed.length > 0) subtrees.push(frontier.size, Buffer.concat(grown.completed));
    }
    if (subtrees.length > 0) {
      const places = Array(subtrees.length / 2)
        .fill('(?, ?)')
        .join(', ');
      await connection.run(`insert into subtree (last_seq, hashes) values ${places}`, subtrees);
    }
    if (rows.length < chunk) return;
  }
};
