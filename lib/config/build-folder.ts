/** Where the site is built, below the program's own folder; a second checkout or a test run may name another. */
export const BUILD_FOLDER = process.env['BENCHLEAF_BUILD_DIR'] ?? '.next';
