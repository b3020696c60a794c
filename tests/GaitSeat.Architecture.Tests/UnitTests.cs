using System.Reflection;
using GaitSeat.Model;

namespace GaitSeat.Architecture.Tests;

/// <summary>A number of the shared records carries its unit in its name, or in that of its type, or is known to have none.</summary>
public sealed class UnitTests
{
    private static readonly string[] Units =
        ["Seconds", "Px", "Hz", "Cm", "Deg", "Degrees", "Rad", "Pct", "PctLeg", "CmPerStride"];

    /// <summary>Numbers without a unit, or whose unit stands elsewhere, and why.</summary>
    private static readonly Dictionary<string, string> Unitless = new()
    {
        ["Measured.Value"] = "in the unit of its column",
        ["Measured.StandardError"] = "in the unit of its column",
        ["Measured.HalfWidth95"] = "in the unit of its column",
        ["Finding.Value"] = "in the unit of Finding.Unit",
        ["Finding.Threshold"] = "in the unit of Finding.Unit",
        ["Finding.ProbabilityPastThreshold"] = "0..1",
        ["ChangeEffect.Before"] = "in the unit of its measure",
        ["ChangeEffect.After"] = "in the unit of its measure",
        ["ChangeEffect.Difference"] = "in the unit of its measure",
        ["StirrupShift.ChanceProbability"] = "0..1",
        ["Spell.Confidence"] = "0..1",
        ["Stride.Confidence"] = "0..1",
        ["PointTrack.Confidence"] = "0..1",
        ["PatchMotion.Zoom"] = "a factor",
        ["Session.StirrupHole"] = "a hole's number",
        ["Verdict.ToldProbability"] = "0..1",
    };

    [Fact]
    public void Number_HasItsUnit() => Assert.Empty(Numbers().Where(n => !HasUnit(n.Owner, n.Name) && !Unitless.ContainsKey($"{n.Owner}.{n.Name}")).Select(n => $"{n.Owner}.{n.Name}"));

    /// <summary>An entry nobody needs hides the next mistake.</summary>
    [Fact]
    public void ListOfUnitless_HoldsNothingStale() => Assert.Empty(Unitless.Keys.Except(Numbers().Select(n => $"{n.Owner}.{n.Name}")));

    [Fact]
    public void Numbers_AreFound() => Assert.True(Numbers().Count() > 30, "The records of the model were not found.");

    private static bool HasUnit(string owner, string name) =>
        Units.Any(u => name.EndsWith(u, StringComparison.Ordinal)) || owner.EndsWith("Px", StringComparison.Ordinal);

    private static IEnumerable<(string Owner, string Name)> Numbers() => typeof(Measured).Assembly.GetExportedTypes()
        .SelectMany(t => Named(t).Where(n => IsNumber(n.Type)).Select(n => (t.Name, n.Name)))
        .Distinct();

    /// <summary>Properties, and the parameters of public constructors; those of a record are the same names, spelled the same.</summary>
    private static IEnumerable<(string Name, Type Type)> Named(Type type) =>
    [
        .. type.GetProperties(BindingFlags.Public | BindingFlags.Instance).Where(p => p.GetIndexParameters().Length == 0).Select(p => (p.Name, p.PropertyType)),
        .. type.GetConstructors().SelectMany(c => c.GetParameters()).Select(p => (char.ToUpperInvariant(p.Name![0]) + p.Name[1..], p.ParameterType)),
    ];

    private static bool IsNumber(Type type) =>
        type == typeof(double) || type == typeof(double?) || type == typeof(double[]) || type == typeof(Measured);
}
