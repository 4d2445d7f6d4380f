// Every way in which a table can be read, where what was found leaves a choice of a few: the order of its dates, its decimal mark.
import type { ImportChoices, ImportProposal } from './importProposal.ts';

/** What each way sets, beside the choices that are made already; one way that sets nothing where nothing is to choose. */
export function waysToRead({ asks, dateOrders }: ImportProposal): Pick<ImportChoices, 'dateOrder' | 'decimal'>[] {
  const asked = asks.map((ask) => ask.code);
  const orders = asked.includes('date-order-unclear') ? dateOrders.map((dateOrder) => ({ dateOrder })) : [{}];
  const marks = asked.includes('decimal-unclear') ? [{ decimal: '.' }, { decimal: ',' }] as const : [{}];
  return orders.flatMap((order) => marks.map((mark) => ({ ...order, ...mark })));
}
