import type { Page } from 'playwright-core';

export interface Spot {
  x: number;
  y: number;
}

/** Sets marks on the picture of a sheet, in the picture's own pixels, with the mouse. */
export class MarkingBoard {
  constructor(private readonly page: Page) {}

  /** Page position of a pixel of the picture. */
  private async at(spot: Spot): Promise<Spot> {
    return this.page.getByTestId('board').evaluate((element, { x, y }) => {
      const svg = element as unknown as SVGSVGElement;
      const box = svg.getBoundingClientRect();
      const view = svg.viewBox.baseVal;
      return { x: box.left + (x / view.width) * box.width, y: box.top + (y / view.height) * box.height };
    }, spot);
  }

  /** Chooses what is to be marked and clicks each of its points. */
  async mark(step: string, spots: readonly Spot[]): Promise<void> {
    await this.page.locator('.steps').getByRole('button', { name: step, exact: true }).click();
    for (const spot of spots) {
      const { x, y } = await this.at(spot);
      await this.page.mouse.click(x, y);
    }
  }

  async drag(from: Spot, to: Spot): Promise<void> {
    const [a, b] = [await this.at(from), await this.at(to)];
    await this.page.mouse.move(a.x, a.y);
    await this.page.mouse.down();
    await this.page.mouse.move(b.x, b.y, { steps: 4 });
    await this.page.mouse.up();
  }

  /** Points set for a step so far. */
  points(step: string): Promise<number> {
    return this.page.locator(`.marksset [data-step="${step}"] path.over`).count();
  }
}
