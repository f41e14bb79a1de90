using BenchmarkDotNet.Running;
using SensorProfile.Benchmarks.Pixels;
using SensorProfile.Benchmarks.Raw;

if (args is ["time-pixel-moments", var folder, .. var rest])
    return PixelMomentsTiming.Run(folder, rest, Console.Out);
if (args is ["time-raw-forms", .. var forms])
    return RawDecodeTiming.Run(forms, Console.Out);
BenchmarkSwitcher.FromAssembly(typeof(Program).Assembly).Run(args);
return 0;
