/** Made by the bundler: it loads every test file of the folder `web`, which say what they test when they are loaded. */
declare module 'all-web-tests';
declare module 'mocha/mocha';
