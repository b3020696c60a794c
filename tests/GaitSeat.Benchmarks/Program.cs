using System.Globalization;
using GaitSeat.Benchmarks;

// dotnet run -c Release --project tests/GaitSeat.Benchmarks -- …
const string Usage = """
    whole <clip>...                       whole run against its two floors, in one process, in turn; clips with a rider in view
    lesson <folder> <minutes> <minutes>   a lesson of 1080p30 and a clip that is trot throughout, of so many minutes; × real time, stages, floors, memory
    length <folder> <minutes:empty[:px]>...  memory over length; px is the height of the picture, 360 if not said
    maths <minutes>...                    the same of maths and tables alone, made-up trot throughout; lengths in rising order
    workers <folder> <clips> <most>       1 to <most> workers on one PostgreSQL, each on a core of its own
    kernels <folder> [BenchmarkDotNet's options]
    study <folder>                        a study over a million strides; the first run makes them
    <folder> keeps what was made for the next time.
    """;

CultureInfo.CurrentCulture = CultureInfo.InvariantCulture;
var (output, never) = (Console.Out, CancellationToken.None);
return args switch
{
    ["whole", _, ..] => await WholeRun.CompareAsync(args[1..], output, never),
    ["lesson", var folder, var lesson, var trot] => await new LessonRun(folder, output).RunAsync(double.Parse(lesson, CultureInfo.InvariantCulture), double.Parse(trot, CultureInfo.InvariantCulture), never),
    ["length", var folder, _, ..] => await LengthRun.RunAsync(folder, args[2..], output, never),
    ["maths", _, ..] => await MathsLengthRun.RunAsync(args[1..], output, never),
    ["workers", var folder, var clips, var most] => await WorkersRun.RunAsync(folder, int.Parse(clips, CultureInfo.InvariantCulture), int.Parse(most, CultureInfo.InvariantCulture), output, never),
    ["kernels", var folder, ..] => KernelRun.Run(folder, args[2..]),
    ["study", var folder] => await StudyBench.RunAsync(folder, output, never),
    _ => Wrong(),
};

static int Wrong()
{
    Console.Error.WriteLine(Usage);
    return 2;
}
