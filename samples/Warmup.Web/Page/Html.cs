using System.Globalization;
using System.Runtime.CompilerServices;
using System.Text;
using System.Text.Encodings.Web;
using System.Text.Unicode;

namespace Warmup.Web;

/// <summary>
/// Text that is HTML. It is made from interpolated strings, of which every hole is encoded unless it is <see cref="Html"/> itself: what was typed
/// cannot become a tag, whoever writes the next part of the page.
/// </summary>
internal readonly record struct Html
{
    private readonly string? _text;

    private Html(string text) => _text = text;

    public static Html Of(ref Builder text) => new(text.ToString());

    /// <summary>A picture that a library drew; it encodes what is in it.</summary>
    public static Html OfPicture(string svg) => new(svg);

    public override string ToString() => _text ?? string.Empty;

    /// <summary>Builds an <see cref="Html"/> from an interpolated string.</summary>
    [InterpolatedStringHandler]
    internal readonly ref struct Builder(int literalLength, int formattedCount)
    {
        private static readonly HtmlEncoder Encoder = HtmlEncoder.Create(UnicodeRanges.All);

        private readonly StringBuilder _text = new(literalLength + (formattedCount * 16));

        public void AppendLiteral(string text) => _text.Append(text);

        public void AppendFormatted(string? text) => _text.Append(Encoder.Encode(text ?? string.Empty));

        public void AppendFormatted(int number) => _text.Append(number.ToString(CultureInfo.InvariantCulture));

        public void AppendFormatted(Html html) => _text.Append(html.ToString());

        public void AppendFormatted(IEnumerable<Html> parts)
        {
            foreach (var part in parts)
            {
                _text.Append(part.ToString());
            }
        }

        /// <summary>A picture that a library drew; it encodes what is in it.</summary>
    public static Html OfPicture(string svg) => new(svg);

    public override string ToString() => _text.ToString();
    }
}
