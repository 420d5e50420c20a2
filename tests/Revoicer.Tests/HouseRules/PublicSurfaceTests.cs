using System.Reflection;
using System.Text.RegularExpressions;
using Revoicer.Music;
using Xunit;

namespace Revoicer.Tests.HouseRules;

public sealed partial class PublicSurfaceTests
{
    private const BindingFlags Open = BindingFlags.Public | BindingFlags.Instance | BindingFlags.Static | BindingFlags.DeclaredOnly;

    private static readonly Type[] PublicTypes = typeof(Beats).Assembly.GetExportedTypes();

    [Fact]
    public void No_public_number_hides_its_unit_in_its_name() =>
        Assert.Empty(PublicTypes.SelectMany(BareUnits));

    [Fact]
    public void A_bare_unit_is_found() => Assert.Equal(
        ["WithUnits.Wait(seconds)", "WithUnits.Raise(levelDb)", "WithUnits..ctor(hz)", "WithUnits.Hz"],
        BareUnits(typeof(WithUnits)));

    [Fact]
    public void Public_records_hold_no_arrays()
    {
        // Two records that hold equal arrays compare unequal; Items<T> is there for that.
        var arrays = PublicTypes
            .SelectMany(type => type.GetProperties(Open).Where(p => p.PropertyType.IsArray), (type, p) => $"{type.Name}.{p.Name}");
        Assert.Empty(arrays);
    }

    [Fact]
    public void No_public_object_can_be_changed_after_it_was_made()
    {
        var objects = PublicTypes.Where(type => !type.IsValueType).ToArray();
        var settable = objects
            .SelectMany(type => type.GetProperties(Open), (type, property) => (type, property))
            .Where(p => p.property.SetMethod is { IsPublic: true } set && !IsInit(set))
            .Select(p => $"{p.type.Name}.{p.property.Name}");
        var fields = objects
            .SelectMany(type => type.GetFields(Open).Where(f => !f.IsInitOnly && !f.IsLiteral), (type, f) => $"{type.Name}.{f.Name}");
        Assert.Empty(settable.Concat(fields));
    }

    private static IEnumerable<string> BareUnits(Type type)
    {
        var methods = type.GetMethods(Open).Cast<MethodBase>().Concat(type.GetConstructors(Open));
        var parameters = methods.SelectMany(
            method => method.GetParameters().Where(p => IsNumber(p.ParameterType) && NamesUnit(p.Name!)),
            (method, p) => $"{type.Name}.{method.Name}({p.Name})");
        var properties = type.GetProperties(Open)
            .Where(p => IsNumber(p.PropertyType) && NamesUnit(p.Name))
            .Select(p => $"{type.Name}.{p.Name}");
        return parameters.Concat(properties).Where(found => !found.Contains(".set_", StringComparison.Ordinal));
    }

    private static bool IsNumber(Type type) => (Nullable.GetUnderlyingType(type) ?? type) is var bare && (bare == typeof(double) || bare == typeof(float));

    // The last word of a name says what the number is.
    private static bool NamesUnit(string name) => UnitAtEnd().IsMatch(name);

    private static bool IsInit(MethodInfo set) => set.ReturnParameter
        .GetRequiredCustomModifiers()
        .Any(m => m.FullName == "System.Runtime.CompilerServices.IsExternalInit");

    [GeneratedRegex("(^|[a-z])(Hz|Hertz|Seconds|Ms|Milliseconds|Db|Decibels|Cents|Metres|Celsius|Kilopascals|Percent|Beats)$|^(hz|hertz|s|seconds|ms|milliseconds|db|decibels|cents|metres|celsius|kilopascals|percent|beats)$")]
    private static partial Regex UnitAtEnd();

    // Not part of the library: what the rule is to find.
    private sealed class WithUnits(double hz)
    {
        public double Hz { get; } = hz;

        public static double Wait(double seconds) => seconds;

        public static double Raise(double levelDb) => levelDb;

        public static double Count(double times) => times;
    }
}
