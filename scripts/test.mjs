// npm test: installs what is missing, then runs every check and test.
import { handOver, installPackages } from './install-packages.mjs';

installPackages();
handOver('scripts/run-tests.ts');
