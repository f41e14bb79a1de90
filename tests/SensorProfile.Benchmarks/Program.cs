using BenchmarkDotNet.Running;
using SensorProfile.Benchmarks.Pixels;

if (args is ["time-pixel-moments", var folder, .. var rest])
    return PixelMomentsTiming.Run(folder, rest, Console.Out);
BenchmarkSwitcher.FromAssembly(typeof(Program).Assembly).Run(args);
return 0;
