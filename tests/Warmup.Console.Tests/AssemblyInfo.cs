// The README's example writes to the current folder, which belongs to the whole process.
[assembly: CollectionBehavior(DisableTestParallelization = true)]
