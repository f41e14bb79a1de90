// One browser and one measurement at a time: two cores are shared by all tests.
[assembly: CollectionBehavior(DisableTestParallelization = true)]
