export type { Paper, PaperKind, Price, SheetStock, Up } from './paper.ts';
