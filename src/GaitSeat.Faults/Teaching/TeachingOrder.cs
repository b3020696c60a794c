using System.Text.Json;
using GaitSeat.Faults.Training;
using GaitSeat.Model;

namespace GaitSeat.Faults.Teaching;

/// <summary>A data file of the coach's that cannot be used.</summary>
public sealed class TeachingException(string message, Exception? inner = null) : Exception(message, inner);

/// <summary>Where a fault stands in the work with a rider.</summary>
/// <param name="Place">From 1; worked on in this order.</param>
/// <param name="Severity">How much it matters to be seen, above 0 to 1.</param>
/// <param name="Why">One line for people.</param>
public sealed record TeachingStep(Fault Fault, int Place, double Severity, string Why);

/// <summary>The order a coach would work in, from a file the coach may edit: length of stirrup before leg, seat before hands, feet last. Common practice, no source.</summary>
public sealed class TeachingOrder
{
    private readonly Dictionary<Fault, TeachingStep> _steps;

    private TeachingOrder(IEnumerable<TeachingStep> steps) => _steps = steps.ToDictionary(s => s.Fault);

    public TeachingStep this[Fault fault] => _steps[fault];

    /// <exception cref="TeachingException">The file is missing, is no such file, or leaves a fault out: which, and what is allowed.</exception>
    public static TeachingOrder Read(string path)
    {
        ArgumentException.ThrowIfNullOrEmpty(path);
        var file = Parse(path);
        var unknown = file.Order.Where(s => s.Fault is null || Of(s.Fault) is null).Select(s => s.Fault ?? "").ToArray();
        if (unknown.Length > 0) throw new TeachingException($"'{path}': found fault '{unknown[0]}'; allowed are {string.Join(", ", Enum.GetValues<Fault>().Select(f => f.ToTerm()))}.");
        var steps = file.Order.Select((s, i) => new TeachingStep(Of(s.Fault!)!.Value, i + 1, s.Severity, s.Why ?? "")).ToArray();
        if (steps.GroupBy(s => s.Fault).FirstOrDefault(g => g.Count() > 1) is { } twice) throw new TeachingException($"'{path}': {twice.Key.ToTerm()} stands {twice.Count()} times; once is allowed.");
        if (Enum.GetValues<Fault>().Except(steps.Select(s => s.Fault)).ToArray() is { Length: > 0 } missing) throw new TeachingException($"'{path}': {string.Join(", ", missing.Select(f => f.ToTerm()))} is missing; every fault needs its place.");
        if (steps.FirstOrDefault(s => !(s.Severity is > 0 and <= 1)) is { } odd) throw new TeachingException(FormattableString.Invariant($"'{path}': severity of {odd.Fault.ToTerm()} is {odd.Severity}; above 0 and at most 1 is allowed."));
        return new(steps);
    }

    /// <summary>A rider's faults in the order to work on them.</summary>
    public IReadOnlyList<TeachingStep> Sort(IEnumerable<Fault> faults)
    {
        ArgumentNullException.ThrowIfNull(faults);
        return [.. faults.Distinct().Select(f => _steps[f]).OrderBy(s => s.Place)];
    }

    private static OrderFile Parse(string path)
    {
        try
        {
            return JsonSerializer.Deserialize<OrderFile>(File.ReadAllBytes(path), FaultJson.Options) is { Order: not null } file ? file : throw new TeachingException($"'{path}' has no 'order'.");
        }
        catch (Exception e) when (e is JsonException or IOException or UnauthorizedAccessException)
        {
            throw new TeachingException($"The teaching order '{path}' cannot be read ({e.Message}). Restore it from the repository, or correct it.", e);
        }
    }

    private static Fault? Of(string term) => Enum.GetValues<Fault>().Where(f => f.ToTerm() == term).Select(f => (Fault?)f).FirstOrDefault();

    private sealed record OrderFile(string? About, IReadOnlyList<OrderStep> Order);

    private sealed record OrderStep(string? Fault, double Severity, string? Why);
}
