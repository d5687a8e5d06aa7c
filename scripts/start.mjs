// npm start: installs what is missing, then starts everything.
import { handOver, installPackages } from './install-packages.mjs';

installPackages();
handOver('scripts/start.ts');
