// Vitest reporter: one last line a program can read, `N passed, N failed`. A file that could not be
// loaded, and an error outside any test, count as failed.

export default class PlainReporter {
  onTestRunEnd(modules, errors) {
    let passed = 0;
    let failed = errors.length;
    let skipped = 0;
    for (const module of modules) {
      for (const test of module.children.allTests()) {
        const { state } = test.result();
        if (state === 'passed') passed++;
        else if (state === 'failed') failed++;
        else skipped++;
      }
      failed += module.errors().length > 0 ? 1 : 0;
    }
    const rest = skipped > 0 ? `, ${skipped} skipped` : '';
    process.stdout.write(`\n${passed} passed, ${failed} failed${rest}\n`);
  }
}
