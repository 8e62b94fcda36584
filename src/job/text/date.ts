import type { Result } from '../../num/result.ts';
import { ok } from '../../num/result.ts';
import type { TextFault } from './text-fault.ts';
import { textFault } from './text-fault.ts';

const DATE = /^(\d{4})-(\d{2})-(\d{2})$/;
const DAYS = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];

/** A day written as 2026-11-20; such texts sort as the days do. */
export function readDate(text: string): Result<string, TextFault> {
  const trimmed = text.trim();
  const parts = DATE.exec(trimmed);
  const [year, month, day] = [parts?.[1], parts?.[2], parts?.[3]].map(Number);
  const isLeap = year! % 4 === 0 && (year! % 100 !== 0 || year! % 400 === 0);
  const days = month === 2 && isLeap ? 29 : (DAYS[month! - 1] ?? 0);
  if (parts !== null && day! >= 1 && day! <= days && year! >= 1900) return ok(trimmed);
  return textFault(
    `${trimmed === '' ? 'nothing' : trimmed} is not a date`,
    'write year, month and day such as 2026-11-20',
  );
}
