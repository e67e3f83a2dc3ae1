// The examples write to the current folder, as a reader's program does, and the whole process shares that folder.
[assembly: Xunit.v3.Parallelization(Mode = Xunit.Sdk.ParallelMode.None)]
