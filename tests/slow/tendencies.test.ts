import { checkTendencies } from '../tendencies/check.ts';

checkTendencies(0.75);
checkTendencies(0.5);
