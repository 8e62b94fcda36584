/** The one file that speaks to the parser of command lines. */
export { Argument, Command, CommanderError } from 'commander';
