// The baseline of key to paint: a program that sends back what it gets, through the same pseudo-terminal.
process.stdin.setRawMode(true);
process.stdin.on('data', (bytes) => process.stdout.write(bytes));
process.stdout.write('ready');
