// The examples write to the current folder, as a reader's program does, and that folder belongs to the whole process.
[assembly: Xunit.v3.Parallelization(Mode = Xunit.Sdk.ParallelMode.None)]
