#!/usr/bin/env node
import { main } from './commands/main.js';
import { terminal } from './commands/terminal/io.js';

process.exitCode = await main(process.argv.slice(2), terminal());
