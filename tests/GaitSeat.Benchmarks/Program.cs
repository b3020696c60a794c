using System.Globalization;
using GaitSeat.Benchmarks;

// Usage: dotnet run -c Release --project tests/GaitSeat.Benchmarks -- <clip>… : whole run against its two floors, in one process, in turn.
//        dotnet run -c Release --project tests/GaitSeat.Benchmarks -- study <folder> : a study over a million strides; the first run makes them.
if (args.Length == 0)
{
    Console.Error.WriteLine("name at least one clip with a rider in view, 1280x720; or: study <folder>");
    return 2;
}

CultureInfo.CurrentCulture = CultureInfo.InvariantCulture;
return args is ["study", var folder]
    ? await StudyBench.RunAsync(folder, Console.Out, CancellationToken.None)
    : await WholeRun.CompareAsync(args, Console.Out, CancellationToken.None);
