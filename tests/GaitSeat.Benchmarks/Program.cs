using System.Globalization;
using GaitSeat.Benchmarks;

// Usage: dotnet run -c Release --project tests/GaitSeat.Benchmarks -- <clip>… : whole run against its two floors, in one process, in turn.
if (args.Length == 0)
{
    Console.Error.WriteLine("name at least one clip with a rider in view, 1280x720");
    return 2;
}

CultureInfo.CurrentCulture = CultureInfo.InvariantCulture;
return await WholeRun.CompareAsync(args, Console.Out, CancellationToken.None);
