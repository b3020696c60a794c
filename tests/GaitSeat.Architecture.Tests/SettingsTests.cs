using System.ComponentModel.DataAnnotations;
using System.Reflection;

namespace GaitSeat.Architecture.Tests;

/// <summary>Every number a user may change has bounds, so that a slip in the pipeline file is refused and not measured with.</summary>
public sealed class SettingsTests
{
    [Theory]
    [MemberData(nameof(House.ProjectNames), MemberType = typeof(House))]
    public void Number_HasARange(string project) => Assert.Empty(
        Settings(project).SelectMany(t => Own(t).Where(p => IsNumber(p.PropertyType) && p.GetCustomAttribute<RangeAttribute>() is null).Select(p => $"{t.Name}.{p.Name}")));

    [Theory]
    [MemberData(nameof(House.ProjectNames), MemberType = typeof(House))]
    public void Default_LiesInItsRange(string project)
    {
        foreach (var type in Settings(project).Where(t => t.GetConstructor([]) is not null))
        {
            var results = new List<ValidationResult>();
            var defaults = Activator.CreateInstance(type)!;
            Validator.TryValidateObject(defaults, new(defaults), results, validateAllProperties: true);
            Assert.Empty(results.Select(r => $"{type.Name}: {r.ErrorMessage}"));
        }
    }

    [Theory]
    [MemberData(nameof(House.ProjectNames), MemberType = typeof(House))]
    public void SettingsRecord_IsSealed(string project) => Assert.Empty(Settings(project).Where(t => !t.IsSealed).Select(t => t.Name));

    [Fact]
    public void Settings_AreFound() => Assert.True(House.Projects.SelectMany(p => Settings(p.Name)).Count() >= 10, "The settings records were not found.");

    /// <summary>Records named so; a record is told by the copy method the compiler gives it.</summary>
    private static IEnumerable<Type> Settings(string project) => House.Get(project).Load().GetTypes()
        .Where(t => t.Name.EndsWith("Settings", StringComparison.Ordinal) && t.GetMethod("<Clone>$") is not null);

    private static IEnumerable<PropertyInfo> Own(Type type) => type.GetProperties(BindingFlags.Public | BindingFlags.Instance).Where(p => p.CanWrite);

    private static bool IsNumber(Type type) =>
        (Nullable.GetUnderlyingType(type) ?? type) is var t && (t == typeof(double) || t == typeof(int) || t == typeof(long) || t == typeof(float));
}
