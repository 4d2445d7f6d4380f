// Rows of a data file, and which of their cells hold data.
import { readStamp } from './stamps.ts';

export interface FileRow { readonly cells: readonly string[]; /** From 1. */ readonly line: number }

export const isBlank = (row: FileRow): boolean => row.cells.every((cell) => cell.trim() === '');

const numeric = /^[<>]?[+-]?(?:\d+(?:[.,]\d+)?|[.,]\d+)(?:[eE][+-]?\d+)?$/u;

/** True for a cell that holds data: a number or a time, nothing else glued to it. */
export const isData = (cell: string): boolean => { const text = cell.trim(); return numeric.test(text) || readStamp(text) !== null; };
