export { type Thickness, thicknessOf, thicknessOfPaper, usualFoam } from './thickness.ts';
