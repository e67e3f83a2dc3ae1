// The README's example writes to the current folder, which belongs to the whole process.
[assembly: Xunit.v3.Parallelization(Mode = Xunit.Sdk.ParallelMode.None)]
