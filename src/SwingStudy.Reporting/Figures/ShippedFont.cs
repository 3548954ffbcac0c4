using System.Reflection;
using ScottPlot;
using SkiaSharp;

namespace SwingStudy.Reporting.Figures;

/// <summary>DejaVu Sans from the program itself, so that figures look the same on every machine, also where no font is installed.</summary>
internal sealed class ShippedFont : IFontResolver
{
    /// <summary>Name under which figures ask for it; also its family name, by which a viewer of an SVG finds it.</summary>
    public const string Name = "DejaVu Sans";

    private static readonly Lazy<bool> Registered = new(() =>
    {
        Fonts.FontResolvers.Insert(0, new ShippedFont());
        Fonts.Default = Name;
        return true;
    });

    private static readonly Lazy<SKTypeface> Regular = new(Load);

    private ShippedFont()
    {
    }

    /// <summary>Makes the font known; once is enough, more do no harm.</summary>
    public static void Register() => _ = Registered.Value;

    /// <summary>Width of a line of text, points.</summary>
    public static float WidthOf(string text, float size)
    {
        using var font = new SKFont(Regular.Value, size);
        return font.MeasureText(text);
    }

    /// <inheritdoc/>
    public SKTypeface? CreateTypeface(string fontName, FontWeight weight, FontSlant slant, FontSpacing spacing) => Named(fontName);

    /// <inheritdoc/>
    public SKTypeface? CreateTypeface(string fontName, bool bold, bool italic) => Named(fontName);

    private static SKTypeface? Named(string fontName) => fontName == Name ? Regular.Value : null;

    private static SKTypeface Load()
    {
        using var stream = Assembly.GetExecutingAssembly().GetManifestResourceStream("fonts/DejaVuSans.ttf")
            ?? throw new InvalidOperationException("The program holds no font.");
        return SKTypeface.FromStream(stream) ?? throw new InvalidOperationException("The font of the program cannot be read.");
    }
}
