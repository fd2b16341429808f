/** The exact copy as text: what the commands may use of it. */
export { type Surroundings } from './build.js';
export { descriptorOf } from './descriptor.js';
export { inOrder, sayProblem, type Problem } from './problem.js';
export { readPackage, type PackageRead, type Texts } from './read.js';
export { writePackage, type Piece } from './write.js';
